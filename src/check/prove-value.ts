import { citationOf } from '../link/linking.js';
import type { Citation, Rulebook, SetBy } from '../link/rulebook.js';
import { type FixtureThat, known, type Wrong } from './fixture-parts.js';
import { limitSubject, type Subject, taskSubject } from './subject.js';

type Fixture = FixtureThat<'limit'> | FixtureThat<'interval'>;

/**
 * Compares a limit or an interval with its published value. `equals` holds the layer that cites the fixture's source to the
 * very value, however much stricter a later layer is; where no layer cites it, the value in force must be the published one.
 */
export function proveValue(fixture: Fixture, rulebook: Rulebook): Wrong | undefined {
  const id = fixture.prove === 'limit' ? fixture.limit : fixture.task;
  const subject = subjectOf(fixture, rulebook);
  const { equals, 'at-least-as-strict-as': atLeast } = fixture;
  const exactly = equals === undefined ? undefined : subject.read(equals, ['equals']);
  const least = atLeast === undefined ? undefined : subject.read(atLeast, ['at-least-as-strict-as']);
  const stray = exactly && citing(subject.chain, citationOf(fixture.source)).find(exactly.differsFrom);
  if (exactly !== undefined && stray !== undefined)
    return differs('equals', `layer \`${stray.layer}\` says ${stray.value} for \`${id}\``, exactly.said);
  for (const [test, published] of [
    ['equals', exactly],
    ['at-least-as-strict-as', least],
  ] as const)
    if (published?.isKept === false)
      return differs(test, `${subject.name} ${subject.is}`, `${published.said}${subject.stricter}`);
  if (exactly !== undefined || least !== undefined) return undefined;
  return { code: 'E402', at: [], message: 'it compares with nothing', help: 'add `equals` or `at-least-as-strict-as`' };
}

function subjectOf(fixture: Fixture, rulebook: Rulebook): Subject {
  return fixture.prove === 'limit'
    ? limitSubject(known('E303', 'limit', fixture.limit, rulebook.limits, ['limit']))
    : taskSubject(known('E306', 'task', fixture.task, rulebook.tasks, ['task']));
}

/**
 * The layers that cite a source: those that name the same clause, where several cite it. Where none does, the one in force.
 */
function citing(chain: readonly SetBy[], { id, at }: Citation): SetBy[] {
  const cited = chain.filter(({ source }) => source.id === id);
  if (cited.length === 0) return chain.slice(-1);
  const sameClause = cited.filter(({ source }) => source.at === at);
  return cited.length > 1 && sameClause.length > 0 ? sameClause : cited;
}

function differs(test: string, is: string, published: string): Wrong {
  return { code: 'E402', at: [test], message: `${is}, published is ${published}` };
}
