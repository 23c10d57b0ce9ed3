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

class YearsRow implements Years {
  constructor(
    readonly p10: number,
    readonly p50: number,
    readonly p90: number,
    readonly from: number,
    readonly p: string,
    private readonly steps: string,
  ) {}
  // Beads are drawn of one piece or a few, so they are read when they are asked for.
  get q() {
    let at = 0;
    return this.steps.split(' ').map((step) => (at += Number(step)));
  }
}

function yearsAt(year: TableColumns['columns']['year'], i: number): Years | null {
  return year.p[i] ? new YearsRow(year.p10[i], year.p50[i], year.p90[i], year.from[i], year.p[i], year.q[i]) : null;
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

// What was seen, by character. Each is read from its column when it is asked for: to put all of
// them together for each of 5,000 pieces took longer than to lay the pieces out.
type Seen = Record<string, string>;
const row = Symbol('row');
type Reader = new (i: number) => Seen;
function readerOf({ words, columns }: TableColumns): Reader {
  class Read {
    [row]: number;
    constructor(i: number) {
      this[row] = i;
    }
  }
  for (const [key, column] of Object.entries(columns.seen ?? {})) {
    Object.defineProperty(Read.prototype, key, {
      get(this: Read) {
        return words[column[this[row]]];
      },
    });
  }
  return Read as unknown as Reader;
}

// What is asked of few pieces, or of none, is read when it is first asked for: to read all of
// 5,000 took longer than to draw them.
class Row implements TablePiece {
  readonly number: string;
  readonly title: string;
  readonly form: string;
  readonly tray: string;
  readonly section: string | null;
  readonly case: string | null;
  readonly made: string;
  readonly by: string;
  readonly year: Years | null;
  readonly pick: TablePiece['pick'];
  readonly torn: string | null;
  private some: Partial<Pick<TablePiece, 'makers' | 'pictures' | 'seen'>> = {};
  constructor(
    private readonly of: TableColumns,
    private readonly i: number,
    private readonly read: Reader,
  ) {
    const { words, columns } = of;
    const marks = columns.pick[i];
    this.number = columns.number[i];
    this.title = words[columns.title[i]];
    this.form = words[columns.form[i]];
    this.tray = words[columns.tray[i]];
    this.section = words[columns.section[i]] || null;
    this.case = words[columns.case[i]] || null;
    this.made = words[columns.made[i]];
    this.by = words[columns.by[i]];
    this.year = yearsAt(columns.year, i);
    this.pick = marks < 0 ? null : { rank: columns.rank[i], show: (marks & 1) > 0, book: (marks & 2) > 0, lead: (marks & 4) > 0 };
    this.torn = words[columns.torn[i]] || null;
  }
  get makers(): Chance[] {
    return (this.some.makers ??= chances(this.of.columns.makers[this.i], this.of.words));
  }
  get pictures(): Picture[] {
    return (this.some.pictures ??= this.of.columns.pictures[this.i].map(picture));
  }
  get seen(): Record<string, string> {
    return (this.some.seen ??= new this.read(this.i));
  }
}

export function readTable(answer: TableColumns): TableAnswer {
  const read = readerOf(answer);
  return { pieces: answer.columns.number.map((_, i) => new Row(answer, i, read)), makers: answer.makers, sections: answer.sections };
}
