/**
 * What the pictures are drawn from: plain values, which pages make from what the API says. They live with the
 * geometry, because the server draws the same pictures for sheets that need no script.
 */
export type {
  LadderBracket,
  LadderLevel,
  LadderPicture,
  LadderSkein,
} from '#api/science/pictures/ladder-picture.ts'
export type { RinsePicture, RinsePoint } from '#api/science/pictures/rinse-picture.ts'
export type { ShiftLevel, ShiftPicture } from '#api/science/pictures/shift-picture.ts'
export type { WearGroup, WearPicture, WearPoint } from '#api/science/pictures/wear-picture.ts'
