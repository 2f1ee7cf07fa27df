import { citationOf } from '../../link/linking.js';
import type { Change, Rulebook } from '../../link/rulebook.js';
import { join, type Markdown, refer } from '../text/markdown.js';
import { said, textOfLayer } from '../text/markdown-safe.js';
import { phrase, phraseMarkdown } from '../text/phrase.js';
import { sayDate } from '../text/say-date.js';
import { sayInterval } from '../text/say-interval.js';
import { capitalize } from '../text/say-list.js';
import { sayPlainQuantity } from '../text/say-quantity.js';
import { type Bibliography, cite } from './cite.js';
import { layerName } from './label-of.js';

/** What the clinic changes, and the recorded deviations. */
export function modelChanges(rulebook: Rulebook, bibliography: Bibliography) {
  const view = (change: Change) => ({
    about: sayAbout(rulebook, change),
    layer: layerName(rulebook, change.layer),
    change: said(capitalize(sayChange(rulebook, change)), change.about),
    because: textOfLayer(change.because, change.layer),
    source: change.source === undefined ? null : cite(rulebook, bibliography, change.source, true),
  });
  const { changes, clinic } = rulebook;
  const strict = changes.filter(({ deviation }) => deviation === undefined);
  return {
    own: strict.filter(({ layer }) => layer === 'clinic').map(view),
    deviations: changes.flatMap((change) => {
      const { deviation } = change;
      if (deviation === undefined) return [];
      const { source } = deviation;
      const approver = clinic.people.find(({ id }) => id === deviation['approved-by'])?.name ?? deviation['approved-by'];
      const approvedOn = deviation['approved-on'];
      return [
        {
          ...view(change),
          reason: textOfLayer(deviation.reason, change.layer),
          basis: cite(rulebook, bibliography, citationOf(source), true),
          approver,
          approvedOn: approvedOn === undefined ? null : sayDate(approvedOn, rulebook.language),
          reviewBy: sayDate(deviation['review-by'], rulebook.language),
        },
      ];
    }),
  };
}

/** What was done, in words: `10 minutes becomes 8 minutes`. */
function sayChange(rulebook: Rulebook, { kind, change, limit, interval, label }: Change): string {
  const becomes = (was: string, is: string) => phrase(rulebook, 'change.becomes', { was, becomes: is });
  switch (kind) {
    case 'limit':
      return limit === undefined
        ? change
        : becomes(sayPlainQuantity(rulebook, limit.was), sayPlainQuantity(rulebook, limit.becomes));
    case 'interval': {
      if (interval === undefined) return change;
      const { was } = interval;
      const before = was === undefined ? phrase(rulebook, 'change.only-after-events') : sayInterval(rulebook, was);
      return becomes(before, sayInterval(rulebook, interval.becomes));
    }
    case 'term':
      return label === undefined ? change : phrase(rulebook, 'change.called', { label });
    default:
      return phrase(rulebook, `change.${kind}`);
  }
}

function sayAbout(rulebook: Rulebook, { kind, about }: Change): Markdown {
  const { limits, procedures, policies, decisions } = rulebook;
  const [owner = about, name = ''] = about.split('/');
  switch (kind) {
    case 'limit':
      return join([limits.get(about)?.label ?? about]);
    case 'interval':
      return refer('task', about);
    case 'term':
      return refer('term', about);
    case 'add-rule':
    case 'replace-rule':
    case 'retire-rule':
      return decisions.has(owner) ? refer('decision', owner) : join([about]);
    case 'add-step':
    case 'replace-step': {
      const step = procedures.get(owner)?.steps.findIndex((each) => each.name === name) ?? -1;
      if (!procedures.has(owner)) return join([about]);
      const referred = refer('procedure', owner);
      return step < 0 ? referred : phraseMarkdown(rulebook, 'change.step', { procedure: referred, number: step + 1 });
    }
    case 'add-point':
    case 'replace-point': {
      const point = policies.get(owner)?.points.findIndex((each) => each.name === name) ?? -1;
      if (!policies.has(owner)) return join([about]);
      return join([refer('policy', owner), ...(point < 0 ? [] : [` (${point + 1})`])]);
    }
  }
}
