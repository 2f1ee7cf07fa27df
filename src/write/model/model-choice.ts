import { decide } from '../../decide/decide.js';
import type { Choice, Fact, Machine, Rulebook, Situation } from '../../link/rulebook.js';
import type { Markdown } from '../text/markdown.js';
import { ruleText, said, saidText } from '../text/markdown-safe.js';
import { phrase, phraseMarkdown } from '../text/phrase.js';
import { capitalize, joinList, joinWith } from '../text/say-list.js';
import { sayPlainQuantity } from '../text/say-quantity.js';
import { type Bibliography, cite } from './cite.js';
import { sayWhy } from './model-decision.js';
import { inCell, sayCondition, sayNeeds } from './say-condition.js';
import { sayFactValue } from './say-fact-value.js';
import { sayProgram } from './say-member.js';
import { type TabulatedRow, tabulateChoice } from './tabulate-choice.js';

/** A choice: what is needed when, and which of the clinic's programs answers typical situations. */
export function modelChoice(rulebook: Rulebook, bibliography: Bibliography, decision: Choice) {
  const machines = [...rulebook.machines.values()].filter(({ kind }) => decision.from.includes(kind));
  const programs = machines.flatMap((machine) => machine.programs.map(({ facts }) => facts));
  return {
    id: decision.id,
    title: decision.title,
    question: decision.question,
    about: decision.about === undefined ? null : ruleText(decision.about),
    lines: decision.rules.flatMap((rule) => {
      const { holds, lines } = sayCondition(rulebook, rule.when);
      if (holds === 'never') return [];
      const needs = rule.needs === undefined ? [] : sayNeeds(rulebook, rule.needs, programs);
      return [
        {
          id: rule.id,
          always: holds === 'always',
          situation: joinWith(rulebook, 'list.semicolon', lines),
          needs: joinWith(rulebook, 'list.semicolon', needs),
          ...sayWhy(rulebook, bibliography, rule),
        },
      ];
    }),
    situations: typicalSituations(rulebook, decision),
  };
}

/** A machine's programs as its maker states them. */
export function modelPrograms(rulebook: Rulebook, machine: Machine) {
  return {
    machine: machine.name,
    id: machine.id,
    source: cite(rulebook, new Map(), { id: 'maker' }),
    instructions: said(`${machine.instructions.title}, ${machine.instructions.edition}`, machine.id),
    programs: machine.programs.map((program) => ({
      id: program.id,
      name: said(program.name, program.id),
      use: saidText(program.use, program.id),
      note: program.note === undefined ? null : saidText(program.note, program.id),
      stages: joinWith(
        rulebook,
        'list.semicolon',
        program.stages.map((stage) => sayStage(rulebook, program.id, stage)),
      ),
      offers: joinWith(rulebook, 'list.semicolon', sayOffers(rulebook, machine, program.facts)),
    })),
  };
}

type Stage = Machine['programs'][number]['stages'][number];

/** As the maker states it, without the second unit of the region. */
function sayStage(rulebook: Rulebook, program: string, { name, temperature, time, pressure, note }: Stage): Markdown {
  const values = [temperature, time].flatMap((each) => (each === undefined ? [] : [sayPlainQuantity(rulebook, each)]));
  if (pressure !== undefined)
    values.push(
      'absolute' in pressure
        ? phrase(rulebook, 'pressure.absolute', { pressure: sayPlainQuantity(rulebook, pressure.absolute) })
        : phrase(rulebook, 'pressure.gauge', { pressure: sayPlainQuantity(rulebook, pressure.gauge) }),
    );
  const [first] = values;
  const stated = first === undefined ? name : phrase(rulebook, 'program.stage', { name, values: listed(rulebook, values) });
  return said(`${stated}${note === undefined ? '' : ` (${note})`}`, program);
}

function listed(rulebook: Rulebook, values: readonly string[]): string {
  return values.reduce((first, next) => phrase(rulebook, 'list.comma', { first, next }));
}

function sayOffers(rulebook: Rulebook, machine: Machine, offered: Situation): Markdown[] {
  return Object.entries(offered).flatMap(([id, value]) => {
    const fact = rulebook.facts.get(id);
    if (fact === undefined || id in machine.facts || fact.statedBy === 'machine') return [];
    return [isSaid(rulebook, fact, sayFactValue(rulebook, fact, value))];
  });
}

/** What the choice comes to with the clinic's programs; where that does not fit a table, the rules' own examples. */
function typicalSituations(rulebook: Rulebook, decision: Choice) {
  const sayPrograms = (ids: readonly string[]) => {
    const programs = ids.filter((id) => id !== 'none').map((id) => sayOwn(rulebook, decision, id));
    return programs.length > 0 ? joinList(rulebook, programs, 'or') : null;
  };
  const table = tabulateChoice(rulebook, decision);
  if (table !== undefined)
    return table.map(({ when, programs }) => ({
      situation: inCell(
        rulebook,
        when.map((each) => sayValues(rulebook, each)),
      ),
      programs: sayPrograms(programs),
    }));
  const examples = decision.rules.flatMap((rule) => rule.examples.filter(({ applies }) => applies).map(({ given }) => given));
  const distinct = new Map(examples.map((given) => [JSON.stringify(Object.entries(given).sort()), given]));
  return [...distinct.values()].flatMap((given) => {
    const answer = decide(rulebook, decision.id, given);
    return answer.settled ? [{ situation: saySituation(rulebook, given), programs: sayPrograms(answer.possible) }] : [];
  });
}

/** A program by its name alone where only one machine has programs to choose from. */
function sayOwn(rulebook: Rulebook, { from }: Choice, id: string): Markdown {
  const machines = [...rulebook.machines.values()].filter(({ kind, programs }) => from.includes(kind) && programs.length > 0);
  const program = machines[0]?.programs.find((each) => each.id === id);
  return machines.length === 1 && program !== undefined ? said(program.name, id) : sayProgram(rulebook, id);
}

function sayValues(rulebook: Rulebook, { fact, values }: TabulatedRow['when'][number]): Markdown {
  const words = values.map((value) => sayFactValue(rulebook, fact, value));
  return isSaid(rulebook, fact, joinList(rulebook, words, 'or'));
}

/** `Soil: dried soil`. */
function isSaid(rulebook: Rulebook, { label }: Fact, value: Markdown): Markdown {
  return phraseMarkdown(rulebook, 'condition.is', { fact: capitalize(label), value });
}

/** A situation in one cell, a fact a line. */
function saySituation(rulebook: Rulebook, given: Situation): Markdown {
  return inCell(
    rulebook,
    Object.entries(given).flatMap(([id, value]) => {
      const fact = rulebook.facts.get(id);
      return fact === undefined ? [] : [isSaid(rulebook, fact, sayFactValue(rulebook, fact, value))];
    }),
  );
}
