// The table comes in columns, texts by their place in a list (desk/table_pieces.cpp); pages read
// it piece by piece.
import type { Chance, Picture, TableAnswer, TablePiece, Years } from './types';

type PictureRow = [string, number, number, number, number?];
export interface TableColumns {
  words: string[];
  makers: TableAnswer['makers'];
  sections: TableAnswer['sections'];
  columns: {
    number: string[];
    title: number[];
    form: number[];
    tray: number[];
    section: number[];
    case: number[];
    made: number[];
    by: number[];
    torn: number[];
    rank: number[];
    pick: number[]; // 1: in the show, 2: in the book, 4: leads, added up; -1: not picked
    pictures: PictureRow[][];
    makers: string[]; // "word thousandths ... thousandths of the unrecorded hand"
    year: { p10: number[]; p50: number[]; p90: number[]; from: number[]; p: string[]; q: string[] };
    seen?: Record<string, number[]>;
  };
}

function yearsAt(year: TableColumns['columns']['year'], i: number): Years | null {
  if (!year.p[i]) {
    return null;
  }
  return {
    p10: year.p10[i],
    p50: year.p50[i],
    p90: year.p90[i],
    from: year.from[i],
    p: year.p[i],
    // Beads are drawn of one piece or a few, so they are read when they are asked for.
    get q() {
      let at = 0;
      return year.q[i].split(' ').map((step) => (at += Number(step)));
    },
  };
}

function chances(text: string, words: string[]): Chance[] {
  const row = text ? text.split(' ').map(Number) : [];
  const list: Chance[] = [];
  for (let i = 0; i + 1 < row.length; i += 2) {
    list.push([words[row[i]], row[i + 1] / 1000]);
  }
  return row.length > 0 ? [...list, [null, row[row.length - 1] / 1000]] : list;
}

const picture = ([view, v, w_mm, h_mm, shape]: PictureRow): Picture => (shape === undefined ? { view, v, w_mm, h_mm } : { view, v, w_mm, h_mm, shape });

export function readTable({ words, makers, sections, columns }: TableColumns): TableAnswer {
  const seen = Object.entries(columns.seen ?? {});
  const pieces = columns.number.map((number, i): TablePiece => {
    const marks = columns.pick[i];
    return {
      number,
      title: words[columns.title[i]],
      form: words[columns.form[i]],
      tray: words[columns.tray[i]],
      section: words[columns.section[i]] || null,
      case: words[columns.case[i]] || null,
      pictures: columns.pictures[i].map(picture),
      made: words[columns.made[i]],
      by: words[columns.by[i]],
      year: yearsAt(columns.year, i),
      makers: chances(columns.makers[i], words),
      pick: marks < 0 ? null : { rank: columns.rank[i], show: (marks & 1) > 0, book: (marks & 2) > 0, lead: (marks & 4) > 0 },
      torn: words[columns.torn[i]] || null,
      seen: Object.fromEntries(seen.map(([key, column]) => [key, words[column[i]]])),
    };
  });
  return { pieces, makers, sections };
}
