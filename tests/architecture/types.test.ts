import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { generateTypes, typesFile } from '../tools/generate-types.js';
import { generateValidators, validatorsFile } from '../tools/generate-validators.js';

it('the types are fresh: `npm run types` would change nothing', async () => {
  expect(readFileSync(typesFile, 'utf8')).toBe(await generateTypes());
});

it('so are the validators', () => {
  expect(readFileSync(validatorsFile, 'utf8')).toBe(generateValidators());
});
