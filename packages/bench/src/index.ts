export { type Answers, nothingAnswered } from './caution/answers.ts';
export { type CautionEntry, hazardEntry } from './caution/caution-entry.ts';
export { cautionJson, stepJson } from './caution/caution-json.ts';
export { cautionSections, lightAndEyewear, stepSections } from './caution/caution-sections.ts';
export { type CautionOptions, type Cautions, cautionsFor } from './caution/cautions.ts';
export {
  type AtRisk,
  atRiskWords,
  type CautionLevel,
  cautionLevels,
  type Hazard,
  type HazardPlace,
  hazardText,
} from './caution/hazard.ts';
export { hazardEvidence, hazardTerms } from './caution/hazard-terms.ts';
export {
  answersFor,
  answersThatStand,
  type BookEntry,
  cautionOfStep,
  type KeptAnswer,
  type KeptReading,
  readingOf,
  stepsRead,
} from './caution/kept-answers.ts';
export { laserKey } from './caution/laser-key.ts';
export { answerLimit, type LimitAnswer } from './caution/limit-answer.ts';
export { type LimitJson, limitJson, type SetLimitJson } from './caution/limit-json.ts';
export {
  type LimitQuestion,
  type LimitTexts,
  readLimitQuestion,
  type Written,
} from './caution/limit-question.ts';
export { limitSections } from './caution/limit-sections.ts';
export { notEvaluated } from './caution/not-evaluated.ts';
export { type QuestionName, questionNames } from './caution/question-names.ts';
export { type HazardQuestion, hazardQuestions, isOpen } from './caution/questions.ts';
export { readAnswers } from './caution/read-answers.ts';
export { countedHazards, type ReadFirst, readFirst } from './caution/read-first.ts';
export { type ShortCaution, shortCautions, whoDecides } from './caution/short-cautions.ts';
export { afterExposure, nobodyAppointed, standingLine } from './caution/standing-line.ts';
export { everyStep, type StepCautions, stepCautions } from './caution/step-cautions.ts';
export { type StepName, stepNames } from './caution/step-names.ts';
export { stepNamed } from './caution/steps.ts';
export { type WithinRange, withinRange } from './caution/within-range.ts';
export { type Difference, differences } from './document/differences.ts';
export {
  type Absence,
  type FieldNode,
  type FieldPath,
  fieldAt,
  type GroupField,
  type ListField,
  type QuantityField,
  type TextField,
  type WordField,
  type WrittenQuantity,
  writtenQuantity,
} from './document/fields.ts';
export { located } from './document/located.ts';
export { placeOfPath, placesRefused, type RefusedPlace } from './document/places.ts';
export type { Schema } from './document/schema.ts';
export { setInText } from './document/set-in-text.ts';
export { printable } from './document/shown.ts';
export type { Written as WrittenTree } from './document/write-tree.ts';
export { assembleLaunch, type PartNames } from './drawer/assemble-launch.ts';
export type { Detector, Drawer, Mirror, Named } from './drawer/drawer.ts';
export { drawerKeyTables, drawerSchema } from './drawer/drawer-schema.ts';
export {
  type KeptPart,
  listOf,
  newPart,
  type PartKind,
  partKinds,
  partsIn,
  wayIn,
  writtenPart,
  writtenWay,
} from './drawer/part.ts';
export { partFields, wayFields } from './drawer/part-fields.ts';
export { drawerOfParts, readPart } from './drawer/part-reading.ts';
export { type NamedText, readDrawer } from './drawer/read-drawer.ts';
export { readSinglePart } from './drawer/single-part.ts';
export { fiveLinesLaunch, observingLoftDrawer, observingLoftLaunch } from './example/example-texts.ts';
export type * from './forecast/expected.ts';
export { forecast } from './forecast/forecast.ts';
export { type ForecastJson, forecastJson } from './forecast/forecast-json.ts';
export { type Glance, glance } from './forecast/glance.ts';
export type { Contribution, GaugeAnswer, GaugeVerdict } from './gauge/answer.ts';
export { type AnswerWords, answerWords } from './gauge/answer-words.ts';
export {
  type Assigned,
  assign,
  exampleHeading,
  type RawColumn,
  type RawReadings,
  type RawSetting,
  settingExample,
  wordOf,
} from './gauge/assign.ts';
export {
  type CurveDrawing,
  type CurvePaper,
  type DrawnMark,
  drawCurve,
  type Tick,
  thinned,
} from './gauge/curve-drawing.ts';
export { filledIn, type PlaceToFill, placesToFill } from './gauge/fill-in.ts';
export type * from './gauge/gauge.ts';
export { gaugeJson } from './gauge/gauge-json.ts';
export { gaugeListSections, gaugeSections } from './gauge/gauge-sections.ts';
export { gaugeNamed, gauges } from './gauge/gauge-table.ts';
export type { HowTo } from './gauge/how-to/how-to.ts';
export { howToFor, howTos, isExample } from './gauge/how-to/how-tos.ts';
export {
  gaugeEntryKind,
  gaugePieceKind,
  type KeptGauge,
  type KeptPicture,
  keptGauge,
  piecesOf,
  sheetKept,
} from './gauge/kept-gauge.ts';
export { type Lead, leadsElsewhere } from './gauge/leads.ts';
export { type Measured, measured } from './gauge/measured.ts';
export { begunPart, type PartToBegin, partsToBegin } from './gauge/new-part.ts';
export { mostPixels, type Picture } from './gauge/picture.ts';
export {
  brokenPicture,
  checkedFormat,
  pictureFormat,
  pictureOfFrame,
  pictureOfJpeg,
  pictureOfPng,
  refuseTooLarge,
} from './gauge/picture-of.ts';
export { type InputsRead, readInputs } from './gauge/read-inputs.ts';
export { isJson, readReadings } from './gauge/read-readings.ts';
export { readTable } from './gauge/read-table.ts';
export { columnsToFill, nextRow, type Taken, withReadingTaken } from './gauge/reading-into-cell.ts';
export { type GaugeGroup, gaugeGroups, gaugesForPart } from './gauge/serves.ts';
export { inShell } from './gauge/setting-words.ts';
export { settingsOfLaunch } from './gauge/settings-of-launch.ts';
export {
  emptyGrid,
  type Grid,
  gridOf,
  hasHeadings,
  hasReadings,
  missingColumns,
  type Sheet,
  sheetOf,
  textOfGrid,
  withCell,
  withHeading,
  withPasted,
} from './gauge/sheet.ts';
export { textOfBytes } from './gauge/text-of-bytes.ts';
export { type DrawerEntry, drawerEntries, keysFilledBy } from './gauge/to-drawer.ts';
export { aimAt, aimAtBrightest, type CameraAim } from './instrument/camera-aim.ts';
export { type CameraDark, darkPictures, withDarkPicture } from './instrument/camera-dark.ts';
export { type CameraLevel, cameraLinearityOf } from './instrument/camera-levels.ts';
export { type CameraReading, cameraReading, isHardlyDarker } from './instrument/camera-meter.ts';
export {
  draggedRegion,
  type PictureSize,
  type PlaceOnPicture,
  type Region,
  type RegionKey,
  regionAfterKey,
  wholePicture,
} from './instrument/camera-region.ts';
export { type CameraTold, cameraWords } from './instrument/camera-words.ts';
export { type CurrentReading, currentReading, momentLength } from './instrument/current-reading.ts';
export {
  type DetectorWatts,
  detectorOf,
  detectorWatts,
  detectorWords,
  readBy,
  readsDetector,
} from './instrument/detector-watts.ts';
export { type DeviceNumber, deviceNumber, numberOfAnswer } from './instrument/device-number.ts';
export { type BlockedFloor, floorOf } from './instrument/floor-of.ts';
export { type ColumnSeparator, columnSeparators, type LineFormat } from './instrument/line-format.ts';
export { columnCount, linePreview, type PreviewedLine } from './instrument/line-preview.ts';
export { type LogTold, logWords } from './instrument/log-words.ts';
export {
  fromMeter,
  type MeterUnit,
  meterUnitNamed,
  meterUnits,
  readingUnitOf,
} from './instrument/meter-unit.ts';
export { readLine } from './instrument/read-line.ts';
export { type LoggedReading, readLog } from './instrument/read-log.ts';
export { type Reading, type ReadingUnit, readingUnits } from './instrument/reading.ts';
export { isSetBack } from './instrument/reading-window.ts';
export {
  axisWords,
  noiseWords,
  rateWords,
  readingWords,
  readTypedReading,
  stateWords,
  type TypedReading,
} from './instrument/reading-words.ts';
export { recogniseLines } from './instrument/recognise-lines.ts';
export {
  noFigures,
  noiseOf,
  type RunningFigures,
  rateOf,
  withReading,
} from './instrument/running-figures.ts';
export { noLine, splitLines, type UnfinishedLine } from './instrument/split-lines.ts';
export {
  between,
  endOf,
  pinched,
  shifted,
  type TimeStretch,
  zoomed,
} from './instrument/time-stretch.ts';
export {
  bucketsOfReadings,
  type TraceBucket,
  type TraceColumns,
  traceColumns,
  traceWords,
} from './instrument/trace.ts';
export { type Edited, editLaunch } from './launch/edit-launch.ts';
export { launchWith, type Moved, movedByAmount, movedByFactor } from './launch/in-hand.ts';
export type * from './launch/launch.ts';
export { launchFields } from './launch/launch-fields.ts';
export { launchKeyTables, launchSchema } from './launch/launch-schema.ts';
export { placeWords } from './launch/place-words.ts';
export { readLaunch } from './launch/read-launch.ts';
export { writeLaunch } from './launch/write-launch.ts';
export {
  assumptionSection,
  type MeasurementTold,
  measurementSection,
  measurementsTold,
  remarkSections,
} from './ledger/advice-sections.ts';
export { cautionSection } from './ledger/caution-section.ts';
export { farEndSection } from './ledger/far-end-section.ts';
export { forecastSections } from './ledger/forecast-sections.ts';
export { type Headline, headline } from './ledger/headline.ts';
export { launchTerms } from './ledger/launch-terms.ts';
export { type LedgerLine, type LedgerStretch, ledgerLines } from './ledger/ledger-lines.ts';
export { notGuidedText } from './ledger/ledger-section.ts';
export type { Block, Cell, Column, Row, Section, Table, Term } from './ledger/section.ts';
export { spotSection } from './ledger/spot-section.ts';
export { toleranceSection } from './ledger/tolerance-section.ts';
export { howToRead, verdict, verdictBlocks } from './ledger/verdict.ts';
export type { FocusPicture } from './light-line/focus-picture.ts';
export { hazardPlaces, type PlaceOfHazards } from './light-line/hazard-places.ts';
export { type LengthToTurn, lengthsToTurn } from './light-line/lengths-to-turn.ts';
export { type LightLine, lightLine } from './light-line/light-line.ts';
export {
  type DrawnPart,
  type DrawnPoint,
  type DrawnSection,
  drawLine,
  type LineDrawing,
  type Paper,
} from './light-line/line-drawing.ts';
export { brightness, lineLedger, type PartLedger, withRanges } from './light-line/line-ledger.ts';
export type { LinePart, LinePartKind } from './light-line/line-parts.ts';
export {
  drawingText,
  focusText,
  foldText,
  halvesText,
  lossAt,
  powerAt,
  powerRangeAt,
} from './light-line/line-words.ts';
export { type MatchOptions, match, matching } from './match/match.ts';
export { type MatchJson, matchJson } from './match/match-json.ts';
export {
  type MatchColumn,
  type MatchFigure,
  type MatchMap,
  type MatchRow,
  matchColumns,
  matchMap,
  matchRows,
  rowOf,
  sortedRows,
} from './match/match-rows.ts';
export { matchSections } from './match/match-sections.ts';
export type * from './match/matched.ts';
export { matchPurposes } from './match/matched.ts';
export { otherModesRule } from './match/other-modes.ts';
export { usableFirstText } from './match/usable-first.ts';
export type { CardPlaces, CardSpots, Spot } from './practice/card-spots.ts';
export {
  cameraOffsetError,
  drawHidden,
  type HiddenLaw,
  usualHiddenLaw,
  withFocus,
} from './practice/draw-hidden.ts';
export type { HiddenBench } from './practice/hidden-bench.ts';
export { doStep, type Played, play, type Tracked } from './practice/play.ts';
export { type PracticeBench, practiceBench } from './practice/practice-bench.ts';
export {
  hiddenBenchOf,
  type PracticeStart,
  plateauCurvature,
  practiceBenchOf,
} from './practice/practice-of-launch.ts';
export { combine, exact } from './quantity/combine.ts';
export { cumulativeOf, type Interval, intervalOf, quantileOf } from './quantity/distribution.ts';
export { compareOrigins, weakestOrigin } from './quantity/origin.ts';
export { type Entry, type Origin, origins, type Quantity, type Shape } from './quantity/quantity.ts';
export { Refusal, type RefusalParts } from './refusal.ts';
export { type CardDrawing, cardDrawing, type RasterDrawing, rasterDrawing } from './steer/card-drawing.ts';
export { lackWords } from './steer/card-offset/card-offset.ts';
export type { CameraLooks, CardReading } from './steer/card-offset/card-reading.ts';
export { cardReading } from './steer/card-offset/card-reading.ts';
export { type CardScale, cardScaleOf, readPixel, readRectangle } from './steer/card-offset/card-scale.ts';
export { type CardSpot, type CardSpotRead, cardSpot, type SpotLack } from './steer/card-offset/card-spot.ts';
export type { Point } from './steer/card-offset/homography.ts';
export { markAfterKey, markAt, spotEllipse } from './steer/card-offset/marks.ts';
export { type MeanSpot, meanSpot } from './steer/card-offset/mean-spot.ts';
export { firstMarks, type ScaleAsked, type ScaleRead, scaleAsked } from './steer/card-offset/scale-asked.ts';
export type { CardOffset, Offsets } from './steer/exact-turns.ts';
export {
  answerEntry,
  begunEntry,
  type KeptSteer,
  type SteerBegun,
  steerAnswerIn,
  steerEntryKind,
  steerThatStands,
} from './steer/kept-steer.ts';
export {
  cardOffsetText,
  type LiveTurn,
  learnedSenses,
  liveTurns,
  liveTurnWords,
  movingBeam,
  offsetsByCamera,
  type SteerCard,
  wanderText,
} from './steer/live-card.ts';
export {
  type PractisedSteer,
  practisedSteer,
  readSeed,
  seedFromId,
  unsteeredBench,
} from './steer/practised.ts';
export { planRaster, type Raster } from './steer/raster.ts';
export {
  fieldText,
  type OffsetRead,
  readDistance,
  readOffset,
  readReadingError,
} from './steer/read-offset.ts';
export { replaySteer, type SteerMove, type SteerNow } from './steer/replay.ts';
export { type ScrewSenses, type WentTo, waysOf } from './steer/senses.ts';
export {
  type Cards,
  type CardsByRuler,
  cardsAt,
  cardsByRuler,
  eyeError,
  rulerLimits,
  type SteerLayout,
  steerLayout,
  usualCards,
} from './steer/steer-layout.ts';
export {
  type MeterFacts,
  meterFacts,
  ordinaryMeter,
  type SteerMeter,
  steerMeter,
  steerMeterWords,
} from './steer/steer-meter.ts';
export { isSamePlan, readBeforeSteer, type SteerPlan, startsDark, steerPlan } from './steer/steer-plan.ts';
export {
  paceWords,
  type StepWords,
  servingWords,
  startWords,
  steerAnswerWords,
  steerRemarkWords,
  steerStepWords,
  steerVerdictWords,
} from './steer/steer-words.ts';
export type { SteerAnswer, SteerAsk, SteerRemark, SteerStep, SteerVerdict } from './steer/step.ts';
export { capital } from './units/capital.ts';
export { type Dimension, dimensions } from './units/dimension.ts';
export { exactText } from './units/exact-text.ts';
export type { QuantityOptions } from './units/mend.ts';
export type { QuantityLimits, QuantityRead } from './units/quantity-read.ts';
export { type QuantityRefused, readQuantity } from './units/read-quantity.ts';
export { stepText } from './units/step-text.ts';
export { unbroken } from './units/unbroken.ts';
export {
  writeDecibel,
  writeDecibelMilliwatt,
  writeInterval,
  writeQuantity,
  writeValue,
} from './units/write.ts';
export { afterWalk } from './walk/after-walk.ts';
export { checkAnswer } from './walk/check-answer.ts';
export { type FollowedTurn, notFollowed, withHeld } from './walk/follow-turn.ts';
export { type Known, knownOf, type WalkGeometry } from './walk/known.ts';
export { heardInTurn, newTurn, type Turn, type TurnContext } from './walk/live-turn.ts';
export { middleWalk } from './walk/middle-walk.ts';
export {
  moveText,
  readsText,
  screwWords,
  stepWords,
  walkActText,
  walkBeginningText,
  walkReadsText,
} from './walk/move-words.ts';
export { type PracticeAct, type Practised, practise } from './walk/practised.ts';
export type { WalkAsk, WalkEstimate, WalkProcedure, WalkRemark, WalkVerdict } from './walk/procedure.ts';
export {
  higherOf,
  liveText,
  type ReadingRead,
  readingText,
  readReading,
  type WalkMeter,
  walkMeters,
} from './walk/reading-text.ts';
export { remarkText, type WalkRemarkId, walkRemarkIds } from './walk/remark-words.ts';
export { readingIn, replayWalk, type WalkMove, type WalkNow } from './walk/replay.ts';
export { settings as ridgeSettings } from './walk/ridge-settings.ts';
export { ridgeWalk } from './walk/ridge-walk.ts';
export {
  type Brightness,
  readingByEye,
  type WalkPlan,
  type WalkProcedureName,
  type WalkSession,
  walkNow,
  walkPlan,
} from './walk/session.ts';
export {
  answerOf,
  type Screw,
  type Sense,
  type WalkAnswer,
  type WalkAxis,
  type WalkMirror,
  type WalkStep,
} from './walk/step.ts';
export { type StepSentence, stepSentence } from './walk/step-sentence.ts';
export { taughtWalk } from './walk/taught-walk.ts';
export { bestTone, toneOf, toneOfReading } from './walk/tone.ts';
export { truthTexts, type WalkTruth } from './walk/truth-words.ts';
export { turnNow } from './walk/turn-now.ts';
export type { TurnNow, TurnSign } from './walk/turn-sign.ts';
export { type TurnSaid, turnSaid } from './walk/turn-words.ts';
export { isSameScrew, type TurnedScrew, turnedOf, withTurned } from './walk/turned-screw.ts';
export {
  notPressed,
  type Press,
  type Pressed,
  pressInTurn,
  seenWhilePressed,
  twoPresses,
} from './walk/two-presses.ts';
export type { WalkAct, WalkReads } from './walk/walk-act.ts';
export { type RidgePicture, ridgePicture, type TracePoint, traceOf } from './walk/walk-pictures.ts';
export {
  meterCounting,
  type ReadSession,
  sessionOf,
  turnContext,
} from './walk/walk-reads.ts';
export { beforeWalkTexts, estimateText, remainingText, verdictText } from './walk/walk-words.ts';
