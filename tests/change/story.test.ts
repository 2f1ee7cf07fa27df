import { spawnSync } from 'node:child_process';
import { generateKeyPairSync } from 'node:crypto';
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Impact } from '../../src/analyse/impact.js';
import { digestOf } from '../../src/change/lock.js';
import { project, run } from '../cli/run.js';

let folder = '';
const clinic = () => join(folder, 'clinic');
const edit = (file: string, ...changes: [from: string, to: string][]) => {
  const path = join(folder, file);
  const text = changes.reduce(
    (sofar, [from, to]) => {
      expect(sofar).toContain(from);
      return sofar.replace(from, to);
    },
    readFileSync(path, 'utf8'),
  );
  writeFileSync(path, text);
};
const read = (file: string) => readFileSync(join(folder, file), 'utf8');
const rulebook = (...args: string[]) => run(args, folder);
const release = (...more: string[]) => rulebook('release', 'clinic', '--rules', 'rules', '--approved-on', '2026-11-25', ...more);
/** The titles of the sections that a redline shows. */
const shownIn = (redline: string) => [...redline.matchAll(/^## (.+)$/gm)].map(([, title]) => title);

/** From release 1.0 to 1.1: a stricter wait, another washer that can do less, and a rule that is retired. */
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'rulebook-story-'));
  cpSync(join(project, 'seeds/harrow-mills'), clinic(), { recursive: true });
  cpSync(join(project, 'rules'), join(folder, 'rules'), { recursive: true });
  const first = await release();
  expect(first.err).toBe('');
  expect(first.code).toBe(0);
  edit('clinic/clinic.yaml', ['version: "1.0"', 'version: "1.1"'], ['effective: 2026-12-01', 'effective: 2027-03-01']);
  edit('clinic/overrides.yaml', ['value: 8 min', 'value: 6 min']);
  writeFileSync(
    join(clinic(), 'overrides.yaml'),
    `${read('clinic/overrides.yaml')}  - change: retire-rule
    decision: washer-compatibility
    rule: heat-sensitive-plastic
    because: No plastic of that kind is left in the practice.
    deviation:
      reason: The last box of trays was used up in January.
      source: { id: clinic, evidence: decided }
      approved-by: m-castellan
      approved-on: 2027-02-10
      review-by: 2027-11-01
`,
  );
  const sheet = read('clinic/equipment/washer-1.yaml');
  const [start, end] = [sheet.indexOf('  - id: stubborn-soil-wash'), sheet.indexOf('  - id: wet-wait')];
  writeFileSync(join(clinic(), 'equipment/washer-1.yaml'), sheet.slice(0, start) + sheet.slice(end));
  edit(
    'clinic/equipment/washer-1.yaml',
    ['id: washer-1', 'id: washer-2'],
    ['name: Washer 1', 'name: Washer 2'],
    ['installed: 2023-05-15', 'installed: 2027-02-20'],
    ['every: 2 mo', 'every: 1 mo'],
  );
}, 120_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the change from release 1.0 to 1.1', () => {
  it('changes exactly these answers', async () => {
    const { out } = await rulebook(
      'impact',
      'clinic',
      '--rules',
      'rules',
      '--from',
      'clinic/releases/1.0/rulebook.json',
      '--json',
    );
    const { decisions } = JSON.parse(out) as Impact;
    const changed = decisions.filter(({ verdict }) => verdict !== 'same');
    expect(changed.map(({ decision }) => decision).sort()).toEqual([
      'cleaning-route',
      'waiting',
      'washer-compatibility',
      'washer-program',
    ]);
    const waiting = changed.find(({ decision }) => decision === 'waiting');
    expect(waiting?.changes).toHaveLength(1);
    expect(waiting?.changes[0]?.regions.map(({ where }) => where.find(({ fact }) => fact === 'load.wait')?.is)).toEqual([
      'more than 6 minutes and up to 8 minutes',
    ]);
    const compatibility = changed.find(({ decision }) => decision === 'washer-compatibility');
    expect(compatibility?.rules).toEqual([{ rule: 'washer-compatibility/heat-sensitive-plastic', what: 'retired' }]);
    expect(compatibility?.changes.map(({ before }) => before)).toEqual(['exclude', 'exclude']);
  });

  describe('its notice and redline', () => {
    beforeAll(async () => {
      const { code, err, out } = await rulebook('build', 'clinic', '--rules', 'rules', '--out', 'out', '--formats', 'md,html');
      expect(err).toBe('');
      expect(code).toBe(0);
      expect(out).toMatch(/since {5}version 1\.0: 7 changes in practice, 4 decisions with other answers, \d+ sections/);
    }, 60_000);

    it('tell each role what changes for it', () => {
      const notice = read('out/notice.md');
      const assistant = notice.slice(notice.indexOf('**Reprocessing assistant'), notice.indexOf('**Clinician'));
      expect(assistant).toContain('Washer 2 is new.');
      expect(assistant).toContain('Washer 1 is out of service.');
      expect(assistant).toContain('Longest wait before cleaning while soil can dry: 6 minutes; until now 8 minutes.');
      const clinician = notice.slice(notice.indexOf('**Clinician'), notice.indexOf('**Chairside'));
      expect(clinician).toContain('6 minutes; until now 8 minutes');
      expect(clinician).not.toContain('Washer 2');
    });

    it('show the situations with another answer, before and after', () => {
      const notice = read('out/notice.md');
      expect(notice).toContain(
        '| time since use: more than 6 minutes and up to 8 minutes; soil: light soil; kept moist: no | Wash it the usual way | **Soak it, then wash it** |',
      );
      expect(notice).toContain('soil: heavy soil or dried soil | Washer 1, Stubborn soil wash | **No program** |');
      expect(notice).toContain('A rule is gone: The hot rinse warps it.');
    });

    it('show whose schedules move', () => {
      const notice = read('out/notice.md');
      expect(notice).toMatch(/\| Washer 2 \| Measure what the dosing pumps deliver .* \| not done \| every month \|/);
      expect(notice).toMatch(/\| Washer 1 \| all \d+ tasks of it \| \| not done \|/);
      expect(notice).not.toMatch(/\| Sterilizer 1 \|/);
    });

    it('leave out every section that is the same', () => {
      const redline = read('out/redline.md');
      const [before, after] = [read('clinic/releases/1.0/manual.md'), read('out/manual.md')].map(bodies);
      const shown = shownIn(redline);
      expect(shown.length).toBeGreaterThan(5);
      for (const [title, body] of after ?? []) {
        const was = before?.get(title);
        if (was === body) expect(shown, title).not.toContain(title);
      }
      expect(shown.some((title) => title?.includes('Store packs'))).toBe(false);
      expect(redline).toContain('~~8~~**6** minutes');
    });

    it('are the same bytes every time', async () => {
      const before = readdirSync(join(folder, 'out')).map((name) => read(`out/${name}`));
      await rulebook('build', 'clinic', '--rules', 'rules', '--out', 'out', '--formats', 'md,html');
      expect(readdirSync(join(folder, 'out')).map((name) => read(`out/${name}`))).toEqual(before);
    });
  });
});

describe('a release', () => {
  it('is made again to the byte, and the next one follows it', async () => {
    const second = await release();
    expect(second.err).toBe('');
    expect(second.out).toContain('HMD-IR-01 version 1.1 is released, in force from 2027-03-01');
    expect(existsSync(join(clinic(), 'releases/1.1/notice.md'))).toBe(true);
    const { code, out, err } = await rulebook('verify', 'clinic', '--all');
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(out.match(/made again: identical/g)).toHaveLength(2);
  }, 120_000);

  it('is never overwritten', async () => {
    const before = read('clinic/releases/1.1/lock.json');
    const { code, err } = await release();
    expect(code).toBe(1);
    expect(err).toContain('E805 version `1.1` does not come after `1.1`, which is released');
    expect(read('clinic/releases/1.1/lock.json')).toBe(before);
  });

  it('is refused while anything is found', async () => {
    edit('clinic/clinic.yaml', ['version: "1.1"', 'version: "1.2"']);
    const overrides = read('clinic/overrides.yaml');
    edit('clinic/overrides.yaml', ['review-by: 2027-11-01', 'review-by: 2027-02-11']);
    const { code, err } = await release();
    expect(code).toBe(1);
    expect(err).toContain('W502');
    expect(err).toContain('0 errors, 1 warning; nothing was released');
    expect(readdirSync(join(clinic(), 'releases')).sort()).toEqual(['1.0', '1.1']);
    writeFileSync(join(clinic(), 'overrides.yaml'), overrides);
    edit('clinic/clinic.yaml', ['version: "1.2"', 'version: "1.1"']);
  });

  it('that was changed, cut short or added to is noticed', async () => {
    const page = read('clinic/releases/1.0/manual.md');
    writeFileSync(join(clinic(), 'releases/1.0/manual.md'), page.replace('8 minutes', '9 minutes'));
    writeFileSync(join(clinic(), 'releases/1.0/extra.txt'), '');
    rmSync(join(clinic(), 'releases/1.0/evaluator.sql'));
    const { code, err } = await rulebook('verify', 'clinic', '--release', '1.0');
    expect(code).toBe(1);
    expect(err).toContain('E801 `manual.md` of release `1.0` was changed');
    expect(err).toContain('E801 `extra.txt` does not belong to release `1.0`');
    expect(err).toContain('E801 `evaluator.sql` of release `1.0` is missing');
  });

  it('whose lock was changed no longer carries the one after it', async () => {
    edit('clinic/releases/1.0/lock.json', ['"on": "2026-12-01"', '"on": "2026-12-02"']);
    const { code, err } = await rulebook('verify', 'clinic');
    expect(code).toBe(1);
    expect(err).toContain('E802 release `1.1` does not follow release `1.0` as that one is now');
  });
});

/** The text under each heading of a manual, by the heading. */
function bodies(manual: string): Map<string, string> {
  const parts = manual.split(/^#{2,3} (?=(?:\d|[A-Z]\b))/m).slice(1);
  return new Map(parts.map((part) => [part.slice(0, part.indexOf('\n')), part.slice(part.indexOf('\n'))]));
}

describe('a release that is broken off', () => {
  it.each([0, 1, 2, 3])('before file %i leaves the releases before it whole', (number) => {
    const own = mkdtempSync(join(tmpdir(), 'rulebook-broken-'));
    try {
      const script = join(project, 'tests/change/broken-off-release.ts');
      const write = (version: string, at: number) =>
        spawnSync(process.execPath, ['--import', 'tsx', script, own, version, String(at)], { cwd: project, encoding: 'utf8' });
      expect(write('1.0', 99)).toMatchObject({ status: 0 });
      const before = readdirSync(join(own, 'releases/1.0'), { recursive: true });
      expect(write('1.1', number)).toMatchObject({ signal: 'SIGKILL' });
      expect(readdirSync(join(own, 'releases')).filter((name) => !name.startsWith('.'))).toEqual(['1.0']);
      expect(readdirSync(join(own, 'releases/1.0'), { recursive: true })).toEqual(before);
      // The next one clears away what was left, and is whole.
      expect(write('1.1', 99)).toMatchObject({ status: 0 });
      expect(readdirSync(join(own, 'releases'))).toEqual(['1.0', '1.1']);
      expect(readdirSync(join(own, 'releases/1.1'), { recursive: true })).toEqual(before);
    } finally {
      rmSync(own, { recursive: true, force: true });
    }
  });
});

describe('a release that was forged', () => {
  it('comes out otherwise when it is made again; a manual that changed wants another version', async () => {
    const own = mkdtempSync(join(tmpdir(), 'rulebook-forged-'));
    try {
      cpSync(join(project, 'seeds/harrow-mills'), join(own, 'clinic'), { recursive: true });
      await run(['release', 'clinic', '--approved-on', '2026-11-25'], own);
      const overrides = join(own, 'clinic/overrides.yaml');
      writeFileSync(overrides, readFileSync(overrides, 'utf8').replace('value: 8 min', 'value: 7 min'));
      const { err: warning } = await run(['build', 'clinic', '--out', 'out', '--formats', 'md'], own);
      expect(warning).toContain('W520 version `1.0` was released, and the manual is another now');
      const [page, lock] = ['manual.md', 'lock.json'].map((name) => join(own, 'clinic/releases/1.0', name));
      const before = readFileSync(page ?? '', 'utf8');
      const after = before.replace('8 minutes', '9 minutes');
      writeFileSync(page ?? '', after);
      writeFileSync(lock ?? '', readFileSync(lock ?? '', 'utf8').replace(digestOf(before), digestOf(after)));
      const { code, err } = await run(['verify', 'clinic'], own);
      expect(code).toBe(1);
      expect(err).toContain('E803 `manual.md` of release `1.0` comes out otherwise');
      expect(err).toContain('help: the release was not made from what it says');
      expect(err.match(/E803/g)).toHaveLength(1);
    } finally {
      rmSync(own, { recursive: true, force: true });
    }
  }, 120_000);
});

describe('a signature', () => {
  it('counts with a key that is trusted, and only then', async () => {
    const own = mkdtempSync(join(tmpdir(), 'rulebook-signed-'));
    try {
      cpSync(join(project, 'seeds/harrow-mills'), join(own, 'clinic'), { recursive: true });
      for (const name of ['key', 'other']) {
        const { privateKey, publicKey } = generateKeyPairSync('ed25519');
        writeFileSync(join(own, `${name}.pem`), privateKey.export({ type: 'pkcs8', format: 'pem' }));
        writeFileSync(join(own, `${name}.pub.pem`), publicKey.export({ type: 'spki', format: 'pem' }));
      }
      const at = (...args: string[]) => run(args, own);
      await at('release', 'clinic', '--approved-on', '2026-11-25', '--sign-with', 'key.pem');
      expect((await at('verify', 'clinic', '--only-files')).out).toContain('signature not looked at');
      expect((await at('verify', 'clinic', '--only-files', '--trust', 'key.pub.pem')).out).toContain('signature valid');
      const other = await at('verify', 'clinic', '--only-files', '--trust', 'other.pub.pem');
      expect(other.code).toBe(1);
      expect(other.err).toContain('E804 the signature of release `1.0` is not that of the trusted key');
      rmSync(join(own, 'clinic/releases/1.0/lock.sig'));
      const unsigned = await at('verify', 'clinic', '--only-files', '--trust', 'key.pub.pem');
      expect(unsigned.err).toContain('E804 release `1.0` is not signed');
      const secret = await at('verify', 'clinic', '--only-files', '--trust', 'key.pem');
      expect(secret.code).toBe(2);
      expect(secret.err).toContain('`key.pem` holds no public Ed25519 key');
    } finally {
      rmSync(own, { recursive: true, force: true });
    }
  }, 180_000);
});
