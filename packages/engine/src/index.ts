// The public surface of the engine: documents, plan, sheets. Grouped by noun; nothing computed here.

export type { CupResult } from './cast/cup-result.ts'
export { fitCupTest } from './cast/own-resin.ts'
export type { Edge, PeakMap, WholeCast } from './cast/whole/whole-cast.ts'
export type { WholeRun } from './cast/whole/whole-run.ts'
export type { CatalogueKind } from './catalogue/find.ts'
export { CATALOGUE, find, nearestIds } from './catalogue/find.ts'
export type { ZeroCheck, ZeroCheckInput } from './cuts/pins/zero-check.ts'
export { zeroCheck } from './cuts/pins/zero-check.ts'
export type { CutsData, ProgramData } from './cuts-data.ts'
export { cutsData, despiteNotes, programFilesOf } from './cuts-data.ts'
export type { CutsPlan } from './cuts-plan.ts'
export { cutsPlan, cutsSteps } from './cuts-plan.ts'
export { CHECKS, FINDING_IDS } from './findings/every-check.ts'
export type { Finding, Severity } from './findings/finding.ts'
export { provedFinding } from './findings/proved.ts'
export type { Work } from './findings/work.ts'
export type { CupUnit } from './piece/cup-header.ts'
export type { CupOptions, CupReadings } from './piece/cup-readings.ts'
export { readCupTest } from './piece/cup-readings.ts'
export type { FileName } from './piece/file-name.ts'
export { fileNamesOf } from './piece/file-name.ts'
export type { Kind } from './piece/kind.ts'
export { KINDS, newPiece } from './piece/kind.ts'
export { nearest as nearestWord } from './piece/nearest.ts'
export type { Operation, Patch } from './piece/patch.ts'
export { applyPatch, invertPatch, PatchProblem } from './piece/patch.ts'
export type { Piece, PieceDocument } from './piece/piece-schema.ts'
export { pieceSchema } from './piece/piece-schema.ts'
export type { Problem } from './piece/problem.ts'
export { InputProblem, readable } from './piece/problem.ts'
export type { Read, Readings } from './piece/read.ts'
export {
  checkCupTest,
  checkPiece,
  checkShop,
  readPiece,
  readReadings,
  readShop,
  usualShop
} from './piece/read.ts'
export type { Reading } from './piece/reading-schema.ts'
export { readingSchema } from './piece/reading-schema.ts'
export type { Files } from './piece/region.ts'
export { schemaPage } from './piece/schema-page.ts'
export type { CupTestDocument, Shop, ShopCupTest, ShopDocument } from './piece/shop-schema.ts'
export { shopSchema } from './piece/shop-schema.ts'
export type { Despite, Plan, Planned, PlanOptions, Verdict } from './plan.ts'
export { check, plan, withFindings } from './plan.ts'
export { fittedTests } from './programs/fitted-tests.ts'
export type { AnyProgram, AnyProof } from './programs/prove-any.ts'
export { cutterBox, proveAny } from './programs/prove-any.ts'
export type { Restarted } from './programs/restarted.ts'
export { restarted } from './programs/restarted.ts'
export { measuredWords } from './programs/setting-words.ts'
export type { Motions } from './proving/motion.ts'
export type { Complaint } from './proving/read/complaint.ts'
export { complaintText } from './proving/read/complaint.ts'
export type { ProgramFacts } from './proving/read/facts.ts'
export { gapsOf } from './proving/read/gaps.ts'
export type { ProgramReading, ReadOptions } from './proving/read/read-program.ts'
export { readProgram } from './proving/read/read-program.ts'
export {
  decimals,
  formatC,
  formatMass,
  formatMinutes,
  formatMm,
  formatVolume
} from './quantity/format.ts'
export { parseQuantity } from './quantity/parse.ts'
export { RUNAWAY_ABOVE_C } from './resin/limits.ts'
export { buyCsv } from './sheets/buy-csv.ts'
export type { PageAssets } from './sheets/page.ts'
export { page } from './sheets/page.ts'
export type { PageFont } from './sheets/page-font.ts'
export type { Deflate } from './sheets/png.ts'
export { facePictures, pngAddress } from './sheets/png.ts'
export type { RunSheetAssets } from './sheets/run-sheet-html.ts'
export { runSheetHtml } from './sheets/run-sheet-html.ts'
export { runSheetMarkdown } from './sheets/run-sheet-md.ts'
export { templateFiles } from './sheets/template-files.ts'
export type { Paper } from './sheets/tile.ts'
export { castRun, fullPlan, surelyChecked, surelyPlanned } from './whole.ts'
export type { PlanInput } from './work.ts'
