import { refusalOf } from './bounds.ts'
import { maybeDecimal } from './quantity.ts'
import { z } from './schema.ts'

/** The measures that stand first where there is a choice. */
export const UnitsSetting = z
  .object({ system: z.enum(['metric', 'us', 'imperial']) })
  .strict()
  .openapi('UnitsSetting')

/** What the calculators begin with; blank is not known. */
export const UsualSetting = z
  .object({
    stockPercent: maybeDecimal({ moreThan: 0, max: 20 }),
    liquorRatio: maybeDecimal({ min: 0.5, max: 500 }),
    scaleStepGrams: maybeDecimal({ moreThan: 0, max: 1000 }),
    acidStrengthPercent: maybeDecimal({ moreThan: 0 }).superRefine((percent, context) => {
      const refused = typeof percent === 'number' ? refusalOf('acidStrength', percent) : undefined
      if (refused) context.addIssue({ code: 'custom', message: refused })
    }),
    waterAlkalinity: maybeDecimal({ min: 0, max: 1500 }),
    altitudeMetres: maybeDecimal({ min: -450, max: 5500 }),
    yarnWetness: maybeDecimal({ min: 0, max: 10 }),
    margin: maybeDecimal({ moreThan: 0, max: 50 }),
  })
  .strict()
  .openapi('UsualSetting')
export type UsualSetting = z.infer<typeof UsualSetting>

export const settingKeys = ['units', 'usual'] as const

/** A setting of the studio; one that nobody has chosen yet stands at version 0 with an empty value. */
export const Setting = z
  .object({
    key: z.enum(settingKeys),
    version: z.number().int(),
    value: z.record(z.string(), z.unknown()),
  })
  .openapi('Setting')
export type Setting = z.infer<typeof Setting>
export type SettingKey = Setting['key']
