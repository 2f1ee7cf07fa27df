import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { measurements } from '../../src/cli/commands/measure.js';
import { project, run, temporaryFolder } from './run.js';

const words = (line: string) => [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? '');
const measure = (line: string, cwd = project) => run(['measure', ...words(line)], cwd);
const steam = 'tests/measure/records/small-sterilizer.csv';
const washer = 'tests/measure/records/washer.csv';

describe('measure', () => {
  it.each(Object.keys(measurements))('%s does what its help shows', async (name) => {
    const { example } = measurements[name] ?? expect.fail(name);
    expect((await measure(`${name} --help`)).out).toContain(`rulebook ${example}`);
    const { code, out, err } = await run(words(example), project);
    expect([code, err]).toEqual([0, '']);
    const { out: json } = await run([...words(example), '--json'], project);
    expect(Object.keys(JSON.parse(json) as object).length).toBeGreaterThan(0);
    expect(out.length).toBeGreaterThan(0);
  });

  it.each([
    ['a0 --temperature "90 °C" --time "1 min"', 'A0 600'],
    ['f0 --temperature "134 °C" --time "3 min" --reference "121 °C"', 'F0 59.85 min at 121 °C, z 10 K'],
    ['f0 --temperature "160 °C" --time "2 h" --reference "170 °C" --z "20 K"', '37.94 minutes at 170 °C, z 20 K'],
    ['steam --temperature "134 °C"', '304.2 kPa, 3.04 bar, 44.12 psi'],
    ['steam --temperature "134 °C" --air "85 kPa"', '219.2 kPa'],
    ['steam --gauge "203 kPa"', '134.01 °C'],
    ['steam --absolute "0.1 MPa"', '99.61 °C'],
    ['leak --start "50 mbar" --end "63 mbar" --time "10 min"', '1.3 mbar/min'],
    ['hardness "12 °dH"', '214.2 mg/L CaCO3'],
    ['hardness "12 °dH"', 'very hard, US Geological Survey'],
    ['convert "250 °F" °C', '121.111 °C'],
    ['convert "1 gpg" mg{CaCO3}/L', '17.1181 mg/L CaCO3'],
    [`a0 --file ${washer}`, 'at temperature load, the lowest of 2'],
    [`a0 --file ${washer} --channels "temperature wall"`, 'A0 9'],
    [`a0 --file ${washer} --counting held`, 'each reading holds until the next one'],
    [`f0 --file ${steam} --reference "121.11 °C"`, 'at 121.11 °C, z 10 K'],
    [`hold --file ${steam} --from "134 °C" --to "137 °C"`, '3 min 40 s with every sensor from 134 °C to 137 °C'],
    [`hold --file ${steam} --from "150 °C" --to "153 °C"`, 'none with every sensor'],
    [`steam --file ${steam} --from "134 °C" --band "3 K" --altitude "50 m"`, 'matches within 2 K'],
    [`steam --file ${steam} --from "134 °C" --band "3 K" --altitude "3000 m"`, 'does not match within 2 K'],
    [`record ${washer}`, 'not looked for'],
  ])('%s', async (line, expected) => {
    const { code, out, err } = await measure(line);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain(expected);
  });

  it('gives the same numbers as data', async () => {
    const { out } = await measure(`record ${steam} --from "134 °C" --band "3 K" --altitude "0 m" --json`);
    expect(JSON.parse(out)).toMatchObject({
      file: steam,
      f0: { unit: 'min{F0}', channel: 'temperature 3', reference: { value: 121.1, unit: 'Cel' } },
      a0: { unit: '{A0}' },
      hold: { time: { value: 220, unit: 's' } },
      steam: { matches: true, tolerance: { value: 2, unit: 'K' } },
      counting: 'lower',
    });
  });

  it('draws a chart, and leaves nothing beside it', async () => {
    const folder = temporaryFolder();
    const { code, out } = await measure(`record ${join(project, washer)} --from "90 °C" --band "5 K" --chart chart.svg`, folder);
    expect(code).toBe(0);
    expect(out).toContain('chart.svg');
    expect(readFileSync(join(folder, 'chart.svg'), 'utf8')).toMatch(
      /^<svg xmlns="http:\/\/www.w3.org\/2000\/svg"[\s\S]*<\/svg>\n$/,
    );
    expect(existsSync(join(folder, 'chart.svg.part'))).toBe(false);
  });

  it('gives no number of a damaged record, nor a chart', async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'cut.csv'), readFileSync(join(project, washer)).subarray(0, -4));
    for (const part of ['a0 --file', 'f0 --file', 'hold --from "90 °C" --band "5 K" --file', 'record --chart chart.svg']) {
      const { code, out, err } = await measure(`${part} cut.csv`, folder);
      expect(code).toBe(1);
      expect(out).toBe('');
      expect(err.split('\n')[0]).toMatch(/^cut\.csv:350:\d+ E703 the last line is not finished$/);
    }
    expect(existsSync(join(folder, 'chart.svg'))).toBe(false);
  });

  it.each([
    ['a0', '--temperature is missing'],
    ['a0 --temperature "90 °C" --time "1 parsec"', 'unknown unit `parsec`'],
    ['a0 --temperature "90 min" --time "1 min"', '`90 min` is a time, expected a temperature'],
    ['a0 --file none.csv', 'there is no file `none.csv`'],
    ['a0 --file tests', 'there is no file `tests`'],
    [`a0 --file ${washer} --time "1 min"`, '--file and --time do not go together'],
    ['a0 --temperature "90 °C" --time "1 min" --channels x', '--channels is for a record'],
    [`a0 --file ${washer} --channels "temperature lod"`, 'unknown channel `temperature lod`'],
    [`a0 --file ${washer} --counting most`, 'unknown counting `most`'],
    [`hold --file ${washer}`, '--from is missing'],
    [`hold --file ${washer} --from "90 °C"`, 'a band is stated by --from and one of --to and --band'],
    [`hold --file ${washer} --from "90 °C" --to "80 °C"`, 'a band ends above where it starts'],
    [`steam --file ${washer} --from "90 °C" --band "5 K"`, 'the record has no pressure'],
    [`record ${steam}`, 'a gauge pressure counts from the air’s'],
    [`record ${steam} --altitude "20000 m"`, 'the standard atmosphere is used up to 11,000 m'],
    [`record ${steam} --altitude "1 m" --air "1 bar"`, '--air and --altitude say the same'],
    ['steam', 'give one of --temperature, --absolute and --gauge'],
    ['steam --temperature "400 °C"', 'steam tables hold from 0 °C to 373.946 °C'],
    ['convert "1 gpg" kPa', '`1 gpg` is no pressure'],
    ['convert "1 gpg" gppg', 'unknown unit `gppg`'],
    ['hardness "12 mg/L"', '`12 mg/L` is a mass concentration, expected a water hardness'],
    ['softener --hardness "1 gpg" --volume "1 gal" --capacity "1 kg" --salt "1 kg"', '--salt and --stock go together'],
    ['leak --start "1 bar" --end "1 bar" --time "0 min"', 'the time of a leak test is above zero'],
    ['weigh', 'unknown command'],
  ])('%s is bad use', async (line, message) => {
    const { code, out, err } = await measure(line);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(message);
  });
});
