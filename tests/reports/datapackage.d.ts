/** What is taken from Frictionless' library, which ships no types. */
declare module 'datapackage' {
  interface Field {
    readonly name: string;
    readonly unit: string;
    readonly description: string;
  }
  interface Resource {
    readonly name: string;
    readonly descriptor: { readonly schema: { readonly fields: readonly Field[] } };
    readonly schema: { castRow(row: readonly string[]): unknown[] };
  }
  export const Package: {
    load(descriptor: unknown): Promise<{
      readonly valid: boolean;
      readonly errors: readonly Error[];
      readonly resources: readonly Resource[];
    }>;
  };
}
