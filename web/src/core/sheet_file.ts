// A spreadsheet on its way in: the file that was dropped or chosen, as text.
export interface SheetFile {
  name: string;
  text: string;
}
let now: SheetFile | null = null;
const heard = new Set<(file: SheetFile | null) => void>();
export function onSheetFile(listener: (file: SheetFile | null) => void): () => void {
  heard.add(listener);
  listener(now);
  return () => void heard.delete(listener);
}
export function putSheetFile(file: SheetFile | null) {
  now = file;
  heard.forEach((each) => each(file));
}

export const isSheet = (name: string) => /\.(csv|tsv|txt|xlsx?|ods|numbers)$/i.test(name);
const largest = 900_000; // bytes; a request of rows may be 1 MB

// UTF-8, or what older programs write. Nothing and a reason, where the page cannot read it.
export async function readSheet(file: File): Promise<{ file: SheetFile | null; why: string }> {
  if (!/\.(csv|tsv|txt)$/i.test(file.name)) {
    return { file: null, why: `${file.name} is no CSV: save it as CSV, or at the desk: backmark import SHOW ${file.name} --map MAP.toml` };
  }
  if (file.size > largest) {
    return { file: null, why: `${file.name} is larger than 900 kB: take it in at the desk, backmark import SHOW ${file.name} --map MAP.toml` };
  }
  const bytes = await file.arrayBuffer();
  try {
    return { file: { name: file.name, text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) }, why: '' };
  } catch {
    return { file: { name: file.name, text: new TextDecoder('windows-1252').decode(bytes) }, why: '' };
  }
}
