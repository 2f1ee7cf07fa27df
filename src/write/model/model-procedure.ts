import type { Procedure, Rulebook } from '../../link/rulebook.js';
import { type Markdown, refer } from '../text/markdown.js';
import { textOfLayer } from '../text/markdown-safe.js';
import { capitalize, joinList, joinWith, sayList, uncapitalize } from '../text/say-list.js';
import { type Bibliography, cite } from './cite.js';
import { labelOf } from './label-of.js';

/** A procedure as its page shows it. */
export function modelProcedure(rulebook: Rulebook, bibliography: Bibliography, procedure: Procedure) {
  const { id, title, layer } = procedure;
  const text = (words: string) => textOfLayer(words, layer);
  return {
    id,
    title,
    purpose: text(procedure.purpose),
    who: joinList(
      rulebook,
      withoutRepeats(rulebook, procedure.who).map((role) => refer('role', role)),
      'or',
    ),
    where: refer('zone', procedure.where),
    wear: capitalize(
      sayList(
        rulebook,
        procedure.wear.map((term) => labelOf(rulebook, term)),
        'and',
      ),
    ),
    ready: joinWith(
      rulebook,
      'list.semicolon',
      procedure.ready.map((each, index) => withoutStop(text(index === 0 ? each : uncapitalize(each)))),
    ),
    cautions: procedure.cautions.map(text),
    steps: procedure.steps.map((step) => ({
      id: step.id,
      do: textOfLayer(step.do, step.layer),
      why: optional(step.why, step.layer),
      caution: optional(step.caution, step.layer),
      ifNot: optional(step.ifNot, step.layer),
      own: step.layer === 'clinic',
    })),
    done: text(procedure.done),
    records:
      procedure.records.length === 0
        ? null
        : joinList(
            rulebook,
            procedure.records.map((form) => refer('form', form)),
            'and',
          ),
    decisions: procedure.decisions
      .filter((each) => rulebook.decisions.has(each) && !rulebook.notHere.has(each))
      .map((each) => refer('decision', each)),
    source: procedure.source.id === 'common-practice' ? null : cite(rulebook, bibliography, procedure.source, true),
  };
}

function optional(text: string | undefined, layer: string): Markdown | null {
  return text === undefined ? null : textOfLayer(text, layer);
}

function withoutStop({ markdown }: Markdown): Markdown {
  return { markdown: markdown.replace(/&#46;(\]\(said:[^)]*\))?$/, '$1') };
}

/** Leaves out a role all of whose persons are named under another one. */
function withoutRepeats({ clinic }: Rulebook, roles: readonly string[]): string[] {
  const holders = (role: string) => clinic.people.filter((person) => person.roles.includes(role));
  return roles.filter((role, index) => {
    const mine = holders(role);
    return !roles.some((other, at) => {
      const theirs = holders(other);
      const isCovered = mine.length > 0 && mine.every((person) => theirs.includes(person));
      return at !== index && isCovered && (theirs.length > mine.length || at < index);
    });
  });
}
