/** How sources that are not publications are named in a citation. */
export const namedSources: Readonly<Record<string, string>> = {
  'common-practice': 'practice',
  maker: 'maker',
  clinic: 'this clinic',
};
