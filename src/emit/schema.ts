import type { Fact, Rulebook } from '../link/rulebook.js';
import { inBaseUnit, leastOf, writtenUnit } from '../measure/quantity.js';
import { boundOf } from './contract.js';
import { headOf } from './head.js';

/** A JSON Schema (2020-12) of what a tool states and what it is answered, for its types and its checks. */
export function rulebookToSchema(rulebook: Rulebook): string {
  const head = headOf(rulebook);
  const text = { type: 'string' };
  const texts = { type: 'array', items: text };
  const outcomes = [...rulebook.decisions.values()].flatMap((decision) => (decision.kind === 'verdict' ? decision.outcomes : []));
  const object = (properties: Record<string, object>, optional: readonly string[] = []) => ({
    type: 'object',
    properties,
    required: Object.keys(properties).filter((key) => !optional.includes(key)),
    additionalProperties: false,
  });
  const schema = {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: `${head.clinic}, ${head.title}: facts and answers`,
    description: `Version ${head.version}, rules of ${head.on}, digest ${head.digest}.`,
    $ref: '#/$defs/facts',
    $defs: {
      facts: {
        title: 'Facts',
        description: 'What is known about a situation. A fact that is absent or null is not stated.',
        type: 'object',
        properties: Object.fromEntries(Object.entries(factSchemas(rulebook)).map(([id, each]) => [id, each])),
        additionalProperties: true,
      },
      answer: {
        title: 'Answer',
        description: 'What a decision answers.',
        ...object(
          {
            decision: { enum: [...rulebook.decisions.keys()] },
            outcome: {
              ...text,
              description: `Of a verdict one of ${[...new Set(outcomes)].join(', ')}; of a choice the program, or none.`,
            },
            possible: { ...texts, description: 'Every outcome that is still possible.' },
            settled: { type: 'boolean', description: 'Whether no missing fact can change the answer.' },
            reasons: {
              type: 'array',
              items: object(
                {
                  rule: text,
                  outcome: text,
                  because: text,
                  certain: { type: 'boolean' },
                  facts: { type: 'object' },
                  source: {
                    ...object({ id: text, at: text, evidence: text, checked: text, note: text }, [
                      'at',
                      'evidence',
                      'checked',
                      'note',
                    ]),
                  },
                },
                ['rule', 'outcome', 'source'],
              ),
            },
            needed: { ...texts, description: 'Facts that could still change the outcome, the most useful question first.' },
            instead: texts,
            cautions: texts,
            offers: {
              type: 'array',
              description: 'Of a choice: every program that was looked at.',
              items: object({
                program: text,
                meets: { type: 'boolean' },
                mayMeet: { type: 'boolean' },
                lacks: { type: 'array', items: object({ rule: text, facts: texts }) },
              }),
            },
            rulebook: { const: head.digest, description: 'Digest of the rulebook that answered.' },
          },
          ['offers'],
        ),
      },
    },
  };
  return `${JSON.stringify(schema, undefined, 2)}\n`;
}

/** A JSON Schema for the value of each fact, by its id. */
export function factSchemas({ facts }: Pick<Rulebook, 'facts'>): Record<string, object> {
  return Object.fromEntries([...facts.values()].map((fact) => [fact.id, factSchema(fact)]));
}

function factSchema(fact: Fact): object {
  const head = { title: fact.question };
  switch (fact.type) {
    case 'boolean':
      return { ...head, type: ['boolean', 'null'] };
    case 'enum':
    case 'answer':
      return { ...head, enum: [...fact.members, null] };
    case 'set':
      return { ...head, type: ['array', 'null'], items: { enum: fact.members } };
    case 'count':
      return { ...head, type: ['integer', 'null'], minimum: 0, maximum: Number.MAX_SAFE_INTEGER };
    case 'date':
      return { ...head, type: ['string', 'null'], format: 'date' };
    case 'quantity': {
      const { unit = '1', minimum, maximum } = fact;
      const least = minimum === undefined ? leastOf(unit) : inBaseUnit(minimum);
      const bounds = {
        ...(Number.isFinite(least) && { minimum: boundOf(least, fact) }),
        maximum: maximum === undefined ? largest : boundOf(inBaseUnit(maximum), fact),
      };
      return {
        ...head,
        description: `In ${writtenUnit(unit)}.`,
        type: ['number', 'null'],
        ...(bounds.minimum === undefined && { minimum: -largest }),
        ...bounds,
      };
    }
  }
}

/** No quantity is larger: see `whyImpossible`. */
const largest = 1e9;
