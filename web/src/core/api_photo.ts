// Where a photograph lies, for pages and for the worker that draws the Table.
export function photo(number: string, view: string, size: number | 'full', v: number): string {
  return `/photo/${encodeURIComponent(number)}/${view}?size=${size}&v=${v}`;
}
