import { corpus, corpusWorkbook, cellOf } from "/work/wt/recalc/tests/workbook/corpus/corpusWorkbook.ts";
import { openWorkbook } from "/work/wt/recalc/src/workbook/openWorkbook.ts";
import { recalculate } from "/work/wt/recalc/src/workbook/recalculate.ts";

import { engineInNode } from "/work/wt/recalc/src/hosts/headless/engineInNode.ts";
const t=performance.now();
const { bytes, summary } = await recalculate(openWorkbook(corpusWorkbook(true)), engineInNode(), undefined, { all: true });
const sheet = openWorkbook(bytes).sheets[1]!;
const left = new Map(summary.left.map((l)=>[l.address,l.reason]));
let bad=0; const by=new Map<string,number>();
const show=(c:any)=>c&&typeof c==="object"?c.error:JSON.stringify(c);
const filter=process.argv[2];
corpus.cases.forEach((c,i)=>{
  if (left.has(`A${i+1}`)) { if(filter==="left"||filter===c.function) console.log("LEFT",c.formula,left.get(`A${i+1}`)); return; }
  const got:any=sheet.rows[i]!.cells[0]?.value; const want:any=cellOf(c.value);
  const same = typeof got==="number"&&typeof want==="number" ? Math.abs(got-want)<=1e-9*Math.max(Math.abs(want),1e-3) : show(got)===show(want) || (got===""&&want==="") ;
  if(!same){bad++;by.set(c.function,(by.get(c.function)??0)+1); if(filter==="all"||filter===c.function)console.log(`row ${i+1} ${c.formula}  want ${show(want)} got ${show(got)}`);}
});
console.log(bad,"of",corpus.cases.length,"left",left.size,"ms",Math.round(performance.now()-t));
if(!filter)console.log([...by].sort((a,b)=>b[1]-a[1]).map(([a,b])=>`${a} ${b}`).join(", "));
process.exit(0);
