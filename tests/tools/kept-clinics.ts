/** Sample clinics of other regions than the demo's, whose manuals are kept in `out/` so that a change to a region can be read. */
export const keptClinics: readonly string[] = ['fenny-marlow', 'ellernbrueck', 'pointe-aux-merisiers'];
