import type { Rule, Rulebook, Source } from '../../link/rulebook.js';
import { type Markdown, refer } from '../text/markdown.js';
import { ruleText, said } from '../text/markdown-safe.js';
import { capitalize } from '../text/say-list.js';
import { type Bibliography, cite } from './cite.js';
import { layerName } from './label-of.js';
import { printedDecisions } from './printed-decisions.js';
import { sayCondition } from './say-condition.js';

/** The numbered bibliography. */
export function modelSources(bibliography: Bibliography) {
  return [...bibliography.values()].map(({ source, number }) => ({
    id: source.id,
    number,
    entry: said(sayEntry(source), source.id),
    note: source.note === undefined ? null : said(source.note, source.id),
  }));
}

function sayEntry({ title, publisher, edition, year, url }: Source): string {
  const parts = [publisher, edition, year === undefined ? undefined : String(year)].filter((part) => part !== undefined);
  return `${title}. ${parts.join(', ')}${parts.length > 0 ? '.' : ''}${url === undefined ? '' : ` ${url.replace(/^https:\/\//, '')}`}`;
}

/** Every rule with where it is printed, its layer and its source; rules that cannot arise in this clinic are marked. */
export function modelRuleIndex(rulebook: Rulebook, bibliography: Bibliography) {
  return printedDecisions(rulebook).map((decision) => ({
    decision: refer('decision', decision.id),
    rules: decision.rules.map((rule) => ({ ...indexEntry(rulebook, bibliography, rule), retired: false, by: null })),
    retired: decision.retired.map(({ rule, by }) => ({ id: rule.id, name: rule.name, by: layerName(rulebook, by.layer) })),
  }));
}

function indexEntry(rulebook: Rulebook, bibliography: Bibliography, rule: Rule) {
  return {
    id: rule.id,
    name: rule.name,
    layer: layerName(rulebook, rule.layer),
    source: cite(bibliography, rule.source, true),
    never: sayCondition(rulebook, rule.when).holds === 'never',
  };
}

/** The glossary, by word. */
export function modelGlossary(rulebook: Rulebook): { id: string; label: string; definition: Markdown }[] {
  return [...rulebook.terms.values()]
    .filter(({ glossary }) => glossary)
    .map(({ id, label, definition }) => ({ id, label: capitalize(label), definition: ruleText(definition) }))
    .sort((a, b) => a.label.localeCompare(b.label, 'en'));
}
