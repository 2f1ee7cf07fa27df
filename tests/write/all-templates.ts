import { loadTemplates } from '../../src/cli/load-manual.js';

/** The templates of everything that is written: manual, wall cards, forms. */
export const allTemplates = loadTemplates();
