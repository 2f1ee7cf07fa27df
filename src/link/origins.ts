import { referencesIn } from './references.js';
import type { Condition, LinkedRules, Origin, Rule, Step } from './rulebook.js';

type Restated = Pick<LinkedRules, 'procedures' | 'decisions' | 'tasks'>;

/** The step of that id, `procedure/step`. */
export function stepOf({ procedures }: Pick<LinkedRules, 'procedures'>, id: string): Step | undefined {
  return procedures.get(id.split('/')[0] ?? '')?.steps.find((each) => each.id === id);
}

/** The rule of that id, `decision/rule`. */
export function ruleOf({ decisions }: Pick<LinkedRules, 'decisions'>, id: string): Rule | undefined {
  return decisions.get(id.split('/')[0] ?? '')?.rules.find((each) => each.id === id);
}

/** Whether a layer above the one named wrote a step or rule anew: what was restated of it no longer holds. */
export function writtenAbove(rules: Restated & Pick<LinkedRules, 'packs'>, { kind, id }: Origin, layer: string): boolean {
  const written = kind === 'step' ? stepOf(rules, id)?.layer : kind === 'rule' ? ruleOf(rules, id)?.layer : undefined;
  const order = [...rules.packs.map((pack) => pack.id), 'clinic'];
  return written !== undefined && order.indexOf(written) > order.indexOf(layer);
}

/** The limits that a step, rule, task or procedure names in its texts or compares with; a limit stands for itself. */
export function limitsBehind(rules: Restated, { kind, id }: Origin): string[] {
  switch (kind) {
    case 'limit':
      return [id];
    case 'step': {
      const step = stepOf(rules, id);
      return step === undefined ? [] : limitsNamed([step.do, step.why, step.caution, step.ifNot, step.onCard]);
    }
    case 'task': {
      const task = rules.tasks.get(id);
      return task === undefined ? [] : limitsNamed([...task.steps, ...task.on, task.when, task.pass, task.ifNot, task.caution]);
    }
    case 'procedure': {
      const procedure = rules.procedures.get(id);
      if (procedure === undefined) return [];
      return limitsNamed([procedure.purpose, procedure.done, ...procedure.ready, ...procedure.cautions]);
    }
    case 'rule': {
      const rule = ruleOf(rules, id);
      return rule === undefined ? [] : limitsOfRule(rule);
    }
  }
}

function limitsOfRule({ when, needs, because, cautions }: Rule): string[] {
  return [...limitsIn(when), ...(needs === undefined ? [] : limitsIn(needs)), ...limitsNamed([because, ...cautions])];
}

function limitsNamed(texts: readonly (string | undefined)[]): string[] {
  return texts.flatMap((text) => referencesIn(text ?? '').flatMap(({ scheme, id }) => (scheme === 'limit' ? [id] : [])));
}

function limitsIn(condition: Condition): string[] {
  switch (condition.kind) {
    case 'all':
    case 'any':
      return condition.of.flatMap(limitsIn);
    case 'not':
      return limitsIn(condition.of);
    case 'test':
      return condition.test.kind === 'compare' && condition.test.limit !== undefined ? [condition.test.limit] : [];
  }
}
