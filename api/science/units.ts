declare const unit: unique symbol

/** A number that carries its unit in its type, so that swapped arguments do not compile. */
type In<Unit extends string> = number & { readonly [unit]: Unit }

export type Grams = In<'g'>
export type Millilitres = In<'mL'>
export type Minutes = In<'min'>
export type Hours = In<'h'>
export type Celsius = In<'°C'>
export type Metres = In<'m'>
/** Of a whole: 0–100. */
export type Percent = In<'%'>
/** Grams on 100 g of dry fibre, as supplied. */
export type PercentOnFibre = In<'% owf'>
/** Grams made up to 100 mL. */
export type PercentInVolume = In<'% w/v'>
/** Millilitres of bath for each gram of dry fibre. */
export type MillilitresPerGram = In<'mL/g'>
export type MolesPerLitre = In<'mol/L'>
/** Alkalinity, as calcium carbonate. */
export type MilligramsPerLitre = In<'mg/L'>
export type DeltaE = In<'ΔE'>

/**
 * Says that a bare number is in grams. The functions below do the same for their units.
 *
 * @example
 * grams(150) // 150
 */
export const grams = (value: number): Grams => value as Grams

/**
 * @example
 * millilitres(250) // 250
 */
export const millilitres = (value: number): Millilitres => value as Millilitres

/**
 * @example
 * minutes(35) // 35
 */
export const minutes = (value: number): Minutes => value as Minutes

/**
 * @example
 * hours(12) // 12
 */
export const hours = (value: number): Hours => value as Hours

/**
 * @example
 * celsius(92) // 92
 */
export const celsius = (value: number): Celsius => value as Celsius

/**
 * @example
 * metres(1500) // 1500
 */
export const metres = (value: number): Metres => value as Metres

/**
 * @example
 * percent(80) // 80
 */
export const percent = (value: number): Percent => value as Percent

/**
 * @example
 * percentOnFibre(2) // 2
 */
export const percentOnFibre = (value: number): PercentOnFibre => value as PercentOnFibre

/**
 * @example
 * percentInVolume(1) // 1
 */
export const percentInVolume = (value: number): PercentInVolume => value as PercentInVolume

/**
 * @example
 * millilitresPerGram(30) // 30
 */
export const millilitresPerGram = (value: number): MillilitresPerGram => value as MillilitresPerGram

/**
 * @example
 * molesPerLitre(0.02) // 0.02
 */
export const molesPerLitre = (value: number): MolesPerLitre => value as MolesPerLitre

/**
 * @example
 * milligramsPerLitre(150) // 150
 */
export const milligramsPerLitre = (value: number): MilligramsPerLitre => value as MilligramsPerLitre

/**
 * @example
 * deltaE(1) // 1
 */
export const deltaE = (value: number): DeltaE => value as DeltaE
