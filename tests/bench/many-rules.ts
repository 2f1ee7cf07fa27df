import { cpSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { home } from '../../src/cli/load-rulebook.js';

/** Facts of the invented rules: words, yes or no, and numbers. */
const kinds = ['amber', 'birch', 'cedar', 'drift', 'ember', 'flint', 'grove', 'heath'];
const words = 8;
const flags = 8;
const numbers = 8;

/** Copies the rules and a sample clinic into a folder, with so many invented rules in decisions of 25. Returns where the rules are. */
export function writeManyRules(
  folder: string,
  count: number,
): { rules: string; clinic: string; decisionFile: (index: number) => string } {
  const [rules, clinic] = [join(folder, 'rules'), join(folder, 'clinic')];
  cpSync(join(home, 'rules'), rules, { recursive: true });
  cpSync(join(home, 'seeds', 'harrow-mills'), clinic, { recursive: true });
  const many = join(rules, 'base', 'many');
  mkdirSync(many);
  writeFileSync(
    join(many, 'terms.yaml'),
    `kind: terms\nterms:\n${kinds.map((id) => `  bench-${id}: { label: ${id}, domain: bench-kind, definition: An invented word., glossary: false }`).join('\n')}\n`,
  );
  const facts = [
    ...range(words).map(
      (each) => `  bench.word-${each}: { label: word ${each}, type: enum, of: bench-kind, question: Which word? }`,
    ),
    ...range(flags).map((each) => `  bench.flag-${each}: { label: flag ${each}, type: boolean, question: Is it so? }`),
    ...range(numbers).map(
      (each) => `  bench.time-${each}: { label: time ${each}, type: quantity, unit: min, question: How long? }`,
    ),
  ];
  writeFileSync(join(many, 'facts.yaml'), `kind: facts\nfacts:\n${facts.join('\n')}\n`);
  const decisionFile = (index: number) => join(many, `decision-${index}.yaml`);
  const perDecision = 25;
  for (let index = 0; index * perDecision < count; index += 1)
    writeFileSync(decisionFile(index), decision(index, Math.min(perDecision, count - index * perDecision)));
  return { rules, clinic, decisionFile };
}

function decision(index: number, count: number): string {
  const rules = range(count).map((each) => rule(index, each));
  return `kind: decision
id: bench-${index}
title: Bench ${index}
stage: cleaning
question: What about bench ${index}?
outcomes: [go, look, ask, stop]
say: { go: go, look: look first, ask: ask, stop: stop }
otherwise: ask
gaps: [{ because: They are invented. }]
rules:
${rules.join('')}`;
}

function rule(decisionIndex: number, index: number): string {
  const seed = decisionIndex * 31 + index * 7;
  const pick = (list: readonly string[], at: number) => list[(seed + at) % list.length] ?? '';
  const [flag, word, time] = [seed % flags, (seed * 3) % words, (seed * 5) % numbers];
  const minutes = 5 + (seed % 40);
  return `  - id: rule-${index}
    when:
      bench.word-${word}: { one-of: [bench-${pick(kinds, 0)}, bench-${pick(kinds, 3)}] }
      bench.flag-${flag}: ${seed % 3 !== 0}
      bench.time-${time}: { at-least: ${minutes} min }
    outcome: ${pick(['go', 'look', 'ask', 'stop'], index)}
    because: Rule ${index} of decision ${decisionIndex} says so.
    source: common-practice
    examples:
      - given:
          bench.word-${word}: bench-${pick(kinds, 0)}
          bench.flag-${flag}: ${seed % 3 !== 0}
          bench.time-${time}: ${minutes + 1} min
        applies: true
      - { given: { bench.time-${time}: ${minutes - 1} min }, applies: false }
`;
}

function range(count: number): number[] {
  return Array.from({ length: count }, (_, index) => index);
}
