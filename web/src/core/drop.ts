// Files let go over the page, folders walked to their files.
import type { Offered } from './intake';

async function filesOf(entry: FileSystemEntry, folder: string): Promise<Offered[]> {
  if (entry.isFile) {
    return [{ file: await new Promise<File>((done, fail) => (entry as FileSystemFileEntry).file(done, fail)), folder }];
  }
  const reader = (entry as FileSystemDirectoryEntry).createReader();
  const list: Offered[] = [];
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((done, fail) => reader.readEntries(done, fail));
    if (some.length === 0) {
      return list;
    }
    for (const one of some) {
      list.push(...(await filesOf(one, entry.name)));
    }
  }
}

// Files chosen in a field; of a folder they carry their path.
export const chosenFiles = (files: FileList | null): Offered[] =>
  [...(files ?? [])].map((file) => ({ file, folder: file.webkitRelativePath.split('/').slice(-2, -1)[0] ?? '' }));

export function onDrop(take: (offered: Offered[]) => void, over: (there: boolean) => void): () => void {
  const carries = (event: DragEvent) => !!event.dataTransfer?.types.includes('Files');
  const near = (event: DragEvent) => {
    if (carries(event)) {
      event.preventDefault();
      over(true);
    }
  };
  const away = (event: DragEvent) => !event.relatedTarget && over(false);
  const drop = async (event: DragEvent) => {
    if (!carries(event)) {
      return;
    }
    event.preventDefault();
    over(false);
    // Entries must be read before the first await: the browser empties the list afterwards.
    const lists = [...event.dataTransfer!.items].map((item) => {
      const entry = item.webkitGetAsEntry();
      const file = entry ? null : item.getAsFile();
      return entry ? filesOf(entry, '') : file ? [{ file, folder: '' }] : [];
    });
    take((await Promise.all(lists)).flat());
  };
  addEventListener('dragover', near);
  addEventListener('dragleave', away);
  addEventListener('drop', drop);
  return () => {
    removeEventListener('dragover', near);
    removeEventListener('dragleave', away);
    removeEventListener('drop', drop);
  };
}
