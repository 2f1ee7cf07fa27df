import { Document } from 'yaml';
import type { Draft } from '../check/score-mutants.js';
import type { Fact, FactValue, Situation } from '../link/rulebook.js';
import { writeValue } from './say-situation.js';

/** Drafts as YAML to paste: examples by rule, and a fixture document whose sources are still to be named. */
export function writeDrafts(drafts: readonly Draft[], facts: ReadonlyMap<string, Fact>): string {
  const given = (situation: Situation) =>
    Object.fromEntries(Object.entries(situation).map(([id, value]) => [id, plainValue(value, facts.get(id))]));
  const examples: Record<string, { given: object; applies: boolean }[]> = {};
  const fixtures: Record<string, object> = {};
  const nameOf = (stem: string) => {
    let name = stem;
    for (let count = 2; name in fixtures; count += 1) name = `${stem}-${count}`;
    return name;
  };
  for (const draft of drafts)
    switch (draft.kind) {
      case 'example': {
        examples[draft.rule] = [...(examples[draft.rule] ?? []), { given: given(draft.given), applies: draft.applies }];
        break;
      }
      case 'situation':
        fixtures[nameOf(`${draft.decision}-${draft.outcome}`)] = {
          prove: 'situation',
          title: 'to be written',
          source: 'to-be-named',
          decision: draft.decision,
          given: given(draft.given),
          outcome: draft.outcome,
        };
        break;
      case 'boundary': {
        const { decision, fact, threshold, below, at, above } = draft;
        fixtures[nameOf(`${decision}-${fact.replaceAll('.', '-')}`)] = {
          prove: 'boundary',
          title: 'to be written',
          source: 'to-be-named',
          decision,
          fact,
          threshold: plainValue(threshold, facts.get(fact)),
          given: given(draft.given),
          below,
          at,
          above,
        };
      }
    }
  const parts = [
    ...Object.entries(examples).map(([rule, list]) => `# examples for rule ${rule}\n${yaml({ examples: list })}`),
    ...(Object.keys(fixtures).length > 0
      ? [`# published values: name the source of each, or take it out\n${yaml({ kind: 'fixture', fixtures })}`]
      : []),
  ];
  return parts.join('\n');
}

function plainValue(value: FactValue, fact: Fact | undefined): unknown {
  return typeof value === 'number' && fact?.type !== 'count' ? writeValue(value, fact) : value;
}

function yaml(data: object): string {
  return new Document(data).toString({ lineWidth: 120 }).trimEnd();
}
