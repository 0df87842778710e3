/** The reading sheet as one page, millimetres at true size: black on white, to be written on. */
import { PAPERS, type Paper } from '../figures/paper.ts';
import type { SheetFigure, SheetTable } from '../figures/readingSheet.ts';
import { LETTERS, round, WORDS } from './ink.ts';

interface Props {
  readonly sheet: SheetFigure;
  readonly paper: Paper;
}

const EDGE = 14;
/** Heights and widths on the page, mm. */
const TOP = 62;
const DEPTH_WIDTH = 17;
const HIGHEST_ROW = 13;
const HEAD = 16;
const BLANK = 9.5;

export function ReadingSheet({ sheet, paper }: Props) {
  const { width, height } = PAPERS[paper];
  const foot = BLANK * sheet.blanks.length + 5 * sheet.reminders.length + 4;
  const rows = sheet.tables.reduce((sum, table) => sum + table.rows.length, 0);
  const room = height - EDGE - foot - TOP - HEAD * sheet.tables.length;
  const row = Math.min(HIGHEST_ROW, room / Math.max(1, rows));
  let y = TOP;
  const tables = sheet.tables.map((table) => {
    const top = y;
    y += HEAD + row * table.rows.length;
    return <Boxes key={table.head} table={table} top={top} row={row} width={width - 2 * EDGE} />;
  });
  const below = y + 4;
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${width} ${height}`}
      width={`${width}mm`}
      height={`${height}mm`}
      role="img"
      aria-label={`${sheet.subtitle}, ${sheet.title}, seen looking in at face ${sheet.face}`}
      fontFamily={WORDS}
      fill="#000"
    >
      <text x={EDGE} y={24} fontSize={titleSize(sheet.title, width)} fontWeight={600}>
        {sheet.title}
      </text>
      <text x={EDGE} y={33} fontSize={5}>
        {sheet.subtitle}
      </text>
      <text x={EDGE} y={43} fontSize={5} fontWeight={600}>
        Clock as seen looking in at face {sheet.face}
      </text>
      <text x={EDGE} y={50} fontSize={4}>
        Depths from the rim of face {sheet.face}, inward
      </text>
      <Clock x={width - EDGE - 21} y={35} face={sheet.face} />
      {tables}
      {sheet.blanks.map((text, i) => (
        <Blank key={text} text={text} y={below + BLANK * (i + 0.7)} width={width} />
      ))}
      {sheet.reminders.map((text, i) => (
        <text
          key={text}
          x={EDGE}
          y={below + BLANK * sheet.blanks.length + 5 * (i + 1)}
          fontSize={3.6}
        >
          {text}
        </text>
      ))}
    </svg>
  );
}

/** As large as it fits beside the clock; a letter is about half as wide as it is high. */
function titleSize(title: string, width: number): number {
  return round(Math.min(7, (width - 2 * EDGE - 46) / (0.52 * Math.max(1, title.length))));
}

interface BoxesProps {
  readonly table: SheetTable;
  readonly top: number;
  readonly row: number;
  readonly width: number;
}

function Boxes({ table: { head, columns, rows }, top, row, width }: BoxesProps) {
  const column = (width - DEPTH_WIDTH) / Math.max(1, columns.length);
  const longest = Math.max(1, ...columns.map((text) => text.length));
  const from = top + HEAD;
  const x = (i: number) => round(EDGE + DEPTH_WIDTH + column * i);
  return (
    <g>
      <text x={EDGE} y={top + 8} fontSize={4} fontWeight={600}>
        {head}
      </text>
      <g fontFamily={LETTERS} fontSize={round(Math.min(3.6, column / (0.65 * longest)))}>
        {columns.map((text, i) => (
          <text key={text} x={round(x(i) + column / 2)} y={from - 2} textAnchor="middle">
            {text}
          </text>
        ))}
      </g>
      <g fontFamily={LETTERS} fontSize={3.6}>
        {rows.map((text, i) => (
          <text key={text} x={EDGE} y={round(from + row * (i + 0.5) + 1.3)}>
            {text}
          </text>
        ))}
      </g>
      <g fill="none" stroke="#000" strokeWidth={0.3}>
        {rows.flatMap((text, r) =>
          columns.map((clock, i) => (
            <rect
              key={`${text} ${clock}`}
              x={x(i)}
              y={round(from + row * r)}
              width={round(column)}
              height={round(row)}
            />
          )),
        )}
      </g>
    </g>
  );
}

interface BlankProps {
  readonly text: string;
  readonly y: number;
  readonly width: number;
}

function Blank({ text, y, width }: BlankProps) {
  return (
    <g>
      <text x={EDGE} y={y} fontSize={4}>
        {text}
      </text>
      <path
        d={`M${EDGE + 4 + 1.95 * text.length} ${y + 1}H${width - EDGE}`}
        stroke="#000"
        strokeWidth={0.3}
      />
    </g>
  );
}

const HOURS = Array.from({ length: 12 }, (_, i) => i + 1);

/** The hole with its hours: the same way round from either face, since each is looked at from outside. */
function Clock({
  x,
  y,
  face,
}: {
  readonly x: number;
  readonly y: number;
  readonly face: 'A' | 'B';
}) {
  return (
    <g textAnchor="middle" fontFamily={LETTERS} fontSize={3.4}>
      <circle cx={x} cy={y} r={15} fill="none" stroke="#000" strokeWidth={0.4} />
      {HOURS.map((hour) => {
        const turn = (hour * Math.PI) / 6;
        return (
          <text
            key={hour}
            x={round(x + 18 * Math.sin(turn))}
            y={round(y - 18 * Math.cos(turn) + 1.2)}
          >
            {hour}
          </text>
        );
      })}
      <text x={x} y={y + 1.5} fontSize={4.4} fontWeight={600}>
        face {face}
      </text>
    </g>
  );
}
