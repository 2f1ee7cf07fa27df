import type { Finding } from '../../read/finding.js';

/** What stands in the way of printing a writing in some format. */
export class CannotPrint extends Error {
  constructor(readonly findings: readonly Finding[]) {
    super(findings.map(({ message }) => message).join('; '));
    this.name = 'CannotPrint';
  }
}
