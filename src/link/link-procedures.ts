import { describeDimension, dimensionOf } from '../measure/quantity.js';
import type { Place } from '../read/finding.js';
import type { Located, Path } from '../read/read-documents.js';
import type { Step as RawStep } from '../read/types.gen.js';
import { checkSample } from './check-sample.js';
import { compileCondition, type Vocabulary } from './compile-condition.js';
import { deviationOf } from './link-limits.js';
import { isFirst } from './link-vocabulary.js';
import { cite, eachOf, expectKnown, expectTerm, type Layer, type Linking, report, usualOrder } from './linking.js';
import { referencesIn } from './references.js';
import { requireStrict } from './require-strict.js';
import type { Change, Form, Procedure, Step } from './rulebook.js';

/** The procedures of all layers, after regions and the clinic added and replaced steps. */
export function linkProcedures(linking: Linking, vocabulary: Vocabulary, changes: Change[]): Map<string, Procedure> {
  const procedures = new Map<string, Procedure>();
  const placed = new Map<string, Place>();
  for (const { layer, document } of eachOf(linking, 'procedure')) {
    const { data } = document;
    if (!isFirst(linking, placed, 'procedure', data.id, document.at(['id']))) continue;
    expectTerm(linking, data.stage, 'stage', document.at(['stage']));
    expectTerm(linking, data.where, 'zone', document.at(['where']));
    data.who.forEach((role, index) => expectTerm(linking, role, 'role', document.at(['who', index])));
    data.wear.forEach((item, index) => expectTerm(linking, item, 'ppe', document.at(['wear', index])));
    const onlyWhen = data['only-when'] && compileCondition(linking, vocabulary, data['only-when'], document, ['only-when']);
    const steps = data.steps.flatMap((raw, index) => {
      const step = linkStep(linking, vocabulary, data.id, raw, layer, document, ['steps', index]);
      return isFirst(linking, placed, 'step', step.id, document.at(['steps', index, 'id'])) ? [step] : [];
    });
    procedures.set(data.id, {
      id: data.id,
      title: data.title,
      stage: data.stage,
      order: data.order ?? usualOrder,
      purpose: data.purpose,
      ...(onlyWhen !== undefined && { onlyWhen }),
      who: data.who,
      where: data.where,
      wear: data.wear,
      ready: data.ready,
      cautions: data.cautions ?? [],
      steps,
      done: data.done,
      records: data.records ?? [],
      decisions: data.decisions ?? [],
      source: cite(linking, data.source, document.at(['source'])),
      layer: layer.id,
      place: document.at(['id']),
    });
  }
  changeSteps(linking, vocabulary, procedures, placed, changes);
  return procedures;
}

function linkStep(
  linking: Linking,
  vocabulary: Vocabulary,
  procedure: string,
  raw: RawStep,
  layer: Layer,
  document: Located,
  path: Path,
): Step {
  const onlyWhen = raw['only-when'] && compileCondition(linking, vocabulary, raw['only-when'], document, [...path, 'only-when']);
  return {
    id: `${procedure}/${raw.id}`,
    name: raw.id,
    ...(onlyWhen !== undefined && { onlyWhen }),
    do: raw.do,
    ...(raw.why !== undefined && { why: raw.why }),
    ...(raw.caution !== undefined && { caution: raw.caution }),
    ...(raw['if-not'] !== undefined && { ifNot: raw['if-not'] }),
    ...(raw['on-card'] !== undefined && { onCard: raw['on-card'] }),
    ...(raw.source !== undefined && { source: cite(linking, raw.source, document.at([...path, 'source'])) }),
    layer: layer.id,
    place: document.at([...path, 'id']),
  };
}

function changeSteps(
  linking: Linking,
  vocabulary: Vocabulary,
  procedures: Map<string, Procedure>,
  placed: Map<string, Place>,
  changes: Change[],
): void {
  for (const { layer, document } of eachOf(linking, 'overrides'))
    document.data.changes.forEach((change, index) => {
      if (change.change !== 'add-step' && change.change !== 'replace-step') return;
      const path = ['changes', index];
      if (!expectKnown(linking, 'E306', 'procedure', change.procedure, procedures.keys(), document.at([...path, 'procedure'])))
        return;
      const procedure = procedures.get(change.procedure);
      if (procedure === undefined) return;
      const names = procedure.steps.map(({ name }) => name);
      const anchor = change.change === 'add-step' ? change.after : change.step.id;
      const anchorPath = change.change === 'add-step' ? [...path, 'after'] : [...path, 'step', 'id'];
      if (!expectKnown(linking, 'E306', `step of \`${procedure.id}\``, anchor, names, document.at(anchorPath))) return;
      const position = names.indexOf(anchor);
      const step = linkStep(linking, vocabulary, procedure.id, change.step, layer, document, [...path, 'step']);
      const source = change.source === undefined ? undefined : cite(linking, change.source, document.at([...path, 'source']));
      const place = document.at([...path, 'step', 'id']);
      if (change.change === 'add-step' && !isFirst(linking, placed, 'step', step.id, place)) return;
      const old = change.change === 'add-step' ? undefined : procedure.steps[position];
      const lost = old === undefined ? [] : lostBy(old, step);
      const accepted = requireStrict(linking, layer, {
        looser: lost.length > 0,
        what: `step \`${step.id}\``,
        because: `the new step leaves out ${lost.join(', ')}`,
        deviation: change.deviation,
        place,
        document,
        path,
      });
      if (!accepted) return;
      if (old === undefined) procedure.steps.splice(position + 1, 0, step);
      else procedure.steps[position] = step;
      changes.push({
        kind: change.change,
        about: step.id,
        layer: layer.id,
        change: change.change === 'add-step' ? 'new step' : 'step replaced',
        because: change.because,
        ...(source !== undefined && { source }),
        ...deviationOf(change),
        place,
      });
    });
}

/** What a replaced step no longer says: a limit, decision, procedure or form it named, its caution, or what to do otherwise. */
function lostBy(old: Step, next: Step): string[] {
  const said = (step: Step) =>
    referencesIn([step.do, step.why, step.caution, step.ifNot].join(' ')).map(({ scheme, id }) => `${scheme} \`${id}\``);
  const kept = said(next);
  return [
    ...said(old).filter((reference) => !kept.includes(reference)),
    ...(old.caution !== undefined && next.caution === undefined ? ['its caution'] : []),
    ...(old.ifNot !== undefined && next.ifNot === undefined ? ['what to do when it does not come out'] : []),
    ...(next.onlyWhen !== undefined && JSON.stringify(next.onlyWhen) !== JSON.stringify(old.onlyWhen) ? ['some situations'] : []),
  ];
}

/** The forms of all layers. */
export function linkForms(linking: Linking, vocabulary: Vocabulary): Map<string, Form> {
  const forms = new Map<string, Form>();
  const placed = new Map<string, Place>();
  for (const { layer, document } of eachOf(linking, 'form')) {
    const { kind, columns, 'only-when': rawOnlyWhen, ...form } = document.data;
    if (!isFirst(linking, placed, kind, form.id, document.at(['id']))) continue;
    if (form.machine !== undefined) expectTerm(linking, form.machine, 'machine-kind', document.at(['machine']));
    expectTerm(linking, form['signed-by'], 'role', document.at(['signed-by']));
    expectKnown(linking, 'E303', 'limit', form.keep, vocabulary.limits.keys(), document.at(['keep']));
    const kept = vocabulary.limits.get(form.keep)?.value;
    if (kept !== undefined && dimensionOf(kept) !== 'time')
      report(
        linking,
        'E308',
        document.at(['keep']),
        `limit \`${form.keep}\` is ${describeDimension(dimensionOf(kept))}, expected a time`,
        'name the limit that says how long the log is kept',
      );
    const onlyWhen = rawOnlyWhen && compileCondition(linking, vocabulary, rawOnlyWhen, document, ['only-when']);
    forms.set(form.id, {
      ...form,
      ...(onlyWhen !== undefined && { onlyWhen }),
      columns: columns.map(({ 'only-when': rawColumn, ...column }, index) => {
        if (column.limit !== undefined)
          expectKnown(linking, 'E303', 'limit', column.limit, vocabulary.limits.keys(), document.at(['columns', index, 'limit']));
        const only = rawColumn && compileCondition(linking, vocabulary, rawColumn, document, ['columns', index, 'only-when']);
        return { ...column, width: column.width ?? 2, ...(only !== undefined && { onlyWhen: only }) };
      }),
      layer: layer.id,
      place: document.at(['id']),
    });
    checkSample(linking, vocabulary, document);
  }
  return forms;
}
