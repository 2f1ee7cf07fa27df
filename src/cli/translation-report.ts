import { checkStale, translatedTexts } from '../check/check-translation.js';
import { choosePacks } from '../link/choose-packs.js';
import type { Rulebook } from '../link/rulebook.js';
import type { Finding } from '../read/finding.js';
import type { Located } from '../read/read-documents.js';
import type { ClinicDocument } from '../read/types.gen.js';
import { loadTemplates } from './load-manual.js';
import { type Loaded, translationsFor } from './load-rulebook.js';

/** How many of the texts that a clinic prints are in its language, and what is wrong with the translation. */
export interface TranslationReport {
  language: string;
  all: number;
  translated: number;
  findings: Finding[];
}

/** Looks at the translation that a clinic uses; nothing where it is printed in the language of its packs. */
export function reportTranslation(loaded: Loaded, { language, translation }: Rulebook): TranslationReport | undefined {
  const clinic = loaded.clinicDocuments.find((each): each is Located<ClinicDocument> => each.data.kind === 'clinic');
  if (translation === undefined || clinic === undefined) return undefined;
  const { documents } = translationsFor(loaded);
  const templates = loadTemplates();
  const texts = translatedTexts(choosePacks(clinic, loaded.packs).packs, templates, documents);
  const translated = texts.filter(({ say }) => say !== undefined).length;
  const missing = texts.length - translated;
  const findings = checkStale(loaded.packs, templates, documents);
  if (missing > 0)
    findings.push({
      code: 'W512',
      message: `${missing} of ${texts.length} texts are not translated into \`${language}\`: they are printed in English`,
      place: clinic.at(['document', 'language']),
      help: `\`rulebook list texts --language ${language} --missing\` lists them`,
    });
  return { language, all: texts.length, translated, findings };
}
