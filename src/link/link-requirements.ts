import type { Place } from '../read/finding.js';
import { isFirst } from './link-vocabulary.js';
import { citationOf, eachOf, expectKnown, type Linking } from './linking.js';
import type { AnswerReference, Requirement } from './rulebook.js';

/** What the publications of all layers ask of a written program, in the order in which they ask it. */
export function linkRequirements(linking: Linking): Map<string, Requirement> {
  const requirements = new Map<string, Requirement>();
  const placed = new Map<string, Place>();
  for (const { document } of eachOf(linking, 'requirements')) {
    const { source, items } = document.data;
    expectKnown(linking, 'E304', 'source', source, linking.sources.keys(), document.at(['source']));
    items.forEach((item, index) => {
      const place = document.at(['items', index, 'id']);
      if (!isFirst(linking, placed, 'requirement', item.id, place)) return;
      requirements.set(item.id, {
        id: item.id,
        item: item.item,
        section: item.section,
        text: item.text,
        ...(item.clause !== undefined && { clause: item.clause }),
        source: citationOf({ id: source, at: item.clause ?? item.item, evidence: item.evidence }),
        reprocessing: item.reprocessing,
        answeredBy: (item['answered-by'] ?? []).map(answerOf),
        place,
      });
    });
  }
  return requirements;
}

/** `policy:sharps/recapping` taken apart. */
export function answerOf(written: string): AnswerReference {
  const colon = written.indexOf(':');
  return { scheme: written.slice(0, colon), id: written.slice(colon + 1) };
}
