import { describe, expect, it } from 'vitest';
import { proveStrict } from '../../src/analyse/prove-strict.js';
import type { Pack } from '../../src/link/choose-packs.js';
import { dictionaryOf, saidTexts } from '../../src/link/dictionary.js';
import { linkRules } from '../../src/link/link-rules.js';
import { lostTokens } from '../../src/link/lost-tokens.js';
import { mapTemplate, templateTexts } from '../../src/link/template-texts.js';
import { textsOf } from '../../src/link/texts.js';
import type { Located } from '../../src/read/read-documents.js';
import type { PackDocument, TranslationDocument } from '../../src/read/types.gen.js';
import { spellTemplates } from '../../src/write/text/spell-templates.js';
import { houseFiles, read } from './house.js';

function documentsOf(files: ReadonlyMap<string, string>): Located[] {
  const { documents, findings } = read([...files].map(([file, text]) => ({ file, bytes: new TextEncoder().encode(text) })));
  expect(findings).toEqual([]);
  return documents;
}

function translation(of: string, texts: object): Located<TranslationDocument> {
  const text = JSON.stringify({ kind: 'translation', language: 'fr-CA', of, texts });
  const [document] = documentsOf(new Map([['t.yaml', text]]));
  if (document?.data.kind !== 'translation') throw new Error('no translation');
  return document as Located<TranslationDocument>;
}

/** The tiny house in French, as far as these texts are translated. */
function inFrench(documents: readonly Located<TranslationDocument>[], more: ReadonlyMap<string, string> = new Map()) {
  const files = houseFiles();
  const clinic = files.get('clinic/clinic.yaml') ?? '';
  files.set('clinic/clinic.yaml', clinic.replace('title: Washing manual', 'title: Washing manual\n  language: fr-CA'));
  const all = documentsOf(new Map([...files, ...more]));
  const under = (folder: string) => all.filter(({ file }) => file.startsWith(folder));
  const packs = ['rules/base', 'rules/regions/north'].flatMap((folder): Pack[] => {
    const own = under(folder);
    const head = own.find((each): each is Located<PackDocument> => each.data.kind === 'pack');
    return head === undefined ? [] : [{ id: head.data.id, head, documents: own }];
  });
  return linkRules(packs, under('clinic'), '2026-06-01', proveStrict, { languages: ['fr-CA'], documents });
}

describe('a rulebook in another language', () => {
  const texts = [
    { of: 'dirty side', say: 'côté souillé' },
    { of: 'Start the washer within [](limit:longest-wait).', say: 'Démarrer le laveur avant [](limit:longest-wait).' },
    { of: 'lead', say: 'responsable' },
  ];

  it('says what is translated, marks what is not, and leaves the clinic’s own words', () => {
    const { rules } = inFrench([translation('base', texts)]);
    expect(rules?.language).toBe('fr-CA');
    expect(rules?.terms.get('dirty-side')?.label).toBe('côté souillé');
    expect(rules?.terms.get('clean-side')?.label).toBe('[en] clean side');
    expect(rules?.procedures.get('wash')?.steps[0]?.do).toBe('Démarrer le laveur avant [](limit:longest-wait).');
    expect(rules?.clinic.about).toBe('One chair.');
    expect(rules?.clinic.document.title).toBe('Washing manual');
  });

  it('looks texts up as the pack writes them, and spells the others as the region does', () => {
    const wording = new Map([['rules/regions/north/wording.yaml', 'kind: wording\nwords: { dirty: filthy, clean: spotless }\n']]);
    const { rules } = inFrench([translation('base', texts)], wording);
    expect(rules?.terms.get('dirty-side')?.label).toBe('côté souillé');
    expect(rules?.terms.get('clean-side')?.label).toBe('[en] spotless side');
  });

  it('renames a role within the texts by its names in that language', () => {
    const renamed = new Map([
      [
        'rules/regions/north/names.yaml',
        'kind: overrides\nchanges:\n  - { change: term, term: infection-lead, label: chief, because: So they say. }\n',
      ],
    ]);
    const more = [
      { of: 'chief', say: 'cheffe (PCI)' },
      { of: 'Getting the soil off.', say: 'Demander à la responsable.' },
    ];
    const { rules } = inFrench([translation('base', [...texts, more[1]]), translation('north', [more[0]])], renamed);
    expect(rules?.terms.get('infection-lead')?.label).toBe('cheffe (PCI)');
    expect(rules?.terms.get('cleaning')?.definition).toBe('Demander à la cheffe (PCI).');
  });

  it('decides as before', () => {
    const { rules } = inFrench([translation('base', texts)]);
    const { rules: english } = inFrench([]);
    const whens = (each: typeof rules) =>
      [...(each?.decisions.values() ?? [])].flatMap(({ rules: all }) => all.map(({ when }) => when));
    expect(whens(rules).length).toBeGreaterThan(0);
    expect(whens(rules)).toEqual(whens(english));
  });
});

describe('a dictionary', () => {
  const find = dictionaryOf(
    saidTexts([
      translation('base/care', [{ of: 'open', say: 'ouvert' }]),
      translation('base/cleaning', [
        { of: 'open', say: 'ouverte' },
        { of: 'shut', say: 'fermée' },
      ]),
      translation('north', [{ of: { one: 'x', other: 'y' }, say: { one: 'u', other: 'v' } }]),
    ]),
  );

  it.each([
    ['base/care', 'open', 'ouvert'],
    ['base/cleaning', 'open', 'ouverte'],
    ['base/care', 'shut', 'fermée'],
    ['north', 'shut', 'fermée'],
    ['base/care', 'shut ', undefined],
    ['base/care', 'constructor', undefined],
    ['constructor', 'open', 'ouvert'],
  ])('of %s says %s as %s', (of, text, said) => {
    expect(find(of, text)).toBe(said);
  });

  it('finds forms together, whatever their order', () => {
    expect(find('base', { other: 'y', one: 'x' })).toEqual({ one: 'u', other: 'v' });
    expect(find('base', { other: 'y' })).toBeUndefined();
  });
});

describe('what a translation loses', () => {
  it.each([
    ['Wait [](limit:a) or [](limit:b).', '[](limit:b), [](limit:a)', undefined],
    ['Wait [](limit:a).', 'Attendre.', '`[](limit:a)` is missing'],
    ['Wait [](limit:a).', 'Attendre [](limit:a) [](limit:a).', '`[](limit:a)` is not in the text'],
    ['{{#if a}}{{b}}{{/if}}{{c}}', '{{c}}{{#if a}}{{b}}{{/if}}', undefined],
    ['{{#if a}}{{b}}{{/if}}', '{{b}}{{#if a}}{{/if}}', '`{{b}}` is missing'],
    ['{{#if a}}{{b}}{{else}}{{c}}{{/if}}', '{{#if a}}{{c}}{{else}}{{b}}{{/if}}', '`{{b}}` is missing'],
    ['| a | b |', '| a b |', '`|` is missing'],
    ['# Rules', 'Règles', '`#` is missing'],
    ['**Caution.** {{x}}', '**Attention.** {{x}}', undefined],
    ['**Caution.** {{x}}', 'Attention. {{x}}', '`**` is missing'],
  ])('%s as %s', (of, say, message) => {
    expect(lostTokens(of, say)?.message).toBe(message);
  });
});

describe('the texts of a template', () => {
  const template =
    '# Rules [](id:section:x)\n\n{{#each all}}\n:::caution\n  Take {{this}}.\n:::\n{{/each}}\n| --- |\n| {{a}} |\n';

  it('are its lines that have words', () => {
    expect(templateTexts(template)).toEqual([
      { text: '# Rules [](id:section:x)', line: 1, column: 1 },
      { text: 'Take {{this}}.', line: 5, column: 3 },
    ]);
    expect(mapTemplate(template, (text) => text)).toBe(template);
  });

  it('are marked before their first word where nobody has translated them', () => {
    const translated = { wording: { take: 'grab' }, translation: { templates: { 'templates/manual': { x: 'y' } } } };
    const said = spellTemplates(new Map([['manual/x', template]]), translated).get('manual/x');
    expect(said).toContain('# [en] Rules [](id:section:x)');
    expect(said).toContain('  [en] Grab {{this}}.');
  });
});

describe('the texts of a document', () => {
  it('are what it prints, without ids, values, examples and titles of sources', () => {
    const yaml = `kind: sources
sources:
  guide: { title: The guide, type: guideline, note: Read in a copy. }
`;
    const [document] = documentsOf(new Map([['s.yaml', yaml]]));
    expect(document && textsOf(document.data).map(({ words }) => words)).toEqual(['Read in a copy.']);
  });
});
