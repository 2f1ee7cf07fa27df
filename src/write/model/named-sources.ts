/** How sources that are not publications are named in a citation. */
export const namedSources: Readonly<Record<string, string>> = {
  'common-practice': 'common practice',
  maker: 'maker',
  clinic: 'this clinic',
};
