import { expect, it } from "vitest";
import { asStored } from "../../../src/pages/practice/grid/asStored.ts";

const gathers = {
  name: "Gathers",
  area: { top: 0, left: 0, bottom: 9, right: 3 },
  columns: ["Date", "Lame", "Looked at"],
  headerRows: 1,
  totalsRows: 0,
};

it.each([
  ["FOOT.FLOCKPREV(Gathers[Lame],Gathers[Looked at])", "FOOT.FLOCKPREV(Gathers[Lame],Gathers[Looked at])"],
  ["[@Lame]/[@[Looked at]]", "Gathers[[#This Row],[Lame]]/Gathers[[#This Row],[Looked at]]"],
  ["SUM([Lame])+COUNTA(Gathers[@])", "SUM(Gathers[Lame])+COUNTA(Gathers[#This Row])"],
  ["LET(x,1,x+1)", "LET(_xlpm.x,1,_xlpm.x+1)"],
  ['LET(a, A1, B, a*2, a+b&"a")', 'LET(_xlpm.a, A1, _xlpm.B, _xlpm.a*2, _xlpm.a+_xlpm.b&"a")'],
  ["x+LET(x,1,LET(y,x,x+y))", "x+LET(_xlpm.x,1,LET(_xlpm.y,_xlpm.x,_xlpm.x+_xlpm.y))"],
  ["MAP(A1:A3,LAMBDA(seen,seen*2))", "MAP(A1:A3,LAMBDA(_xlpm.seen,_xlpm.seen*2))"],
  ["LET(double,LAMBDA(n,n*2),double(A1))", "LET(_xlpm.double,LAMBDA(_xlpm.n,_xlpm.n*2),_xlpm.double(A1))"],
  ["LET(_xlpm.x,1,_xlpm.x)", "LET(_xlpm.x,1,_xlpm.x)"],
  ["SUM(D5#)+ROWS('My cases'!B2#)", "SUM(ANCHORARRAY(D5))+ROWS(ANCHORARRAY('My cases'!B2))"],
])("%s is stored as %s", (typed, stored) => {
  expect(asStored(typed, [gathers], { row: 3, column: 3 })).toBe(stored);
});
