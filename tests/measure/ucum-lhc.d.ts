/** What the tests use of the library; it comes without types. */
declare module '@lhncbc/ucum-lhc' {
  interface UcumLhcUtils {
    validateUnitString(code: string): { status: 'valid' | 'invalid' | 'error' };
    convertUnitTo(from: string, value: number, to: string): { status: 'succeeded' | 'failed' | 'error'; toVal: number | null };
  }
  const library: { UcumLhcUtils: { getInstance(): UcumLhcUtils } };
  export default library;
}
