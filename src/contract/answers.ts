import * as z from 'zod'
import { FINDING_IDS } from '#engine/findings/finding.ts'

/**
 * The answers, as outside checks read them (see docs/architecture.md). Keys carry their unit; chances are 0..1.
 * Every picture is drawn from these and from nothing else.
 */
export const figureSchema = z.strictObject({
  value: z.number(),
  low: z.number(),
  high: z.number(),
  basis: z.enum(['published', 'model', 'measured', 'memory']),
  source: z.string(),
})
export type Figure = z.infer<typeof figureSchema>

const span = z.strictObject({ from: z.number(), to: z.number(), basis: figureSchema.shape.basis, source: z.string() })

/** One published figure of a treatment; sources that clash stand side by side in `all`. */
const treatmentItem = span.extend({ all: z.array(span.extend({ says: z.string().optional() })).optional() })

export const steelAnswerSchema = z.strictObject({
  name: z.string(),
  analysis_wtpct: z.record(z.string(), figureSchema),
  critical: z.strictObject({
    ac1_C: figureSchema,
    ac3_C: figureSchema,
    acm_C: figureSchema.optional(),
    bs_C: figureSchema,
    ms_C: figureSchema,
    mf_C: figureSchema,
  }),
  idealDiameter_mm: figureSchema,
  jominy: z.array(z.strictObject({ distance_mm: z.number(), hardness_HRC: figureSchema })),
  fullyMartensitic_HRC: figureSchema,
  /** As quenched, as published for the grade. */
  asQuenched: z.array(z.strictObject({ says: z.string(), hardness_HRC: figureSchema })),
  treatment: z.strictObject({
    forge_C: treatmentItem.optional(),
    normalise_C: treatmentItem.optional(),
    anneal_C: treatmentItem.optional(),
    austenitise_C: treatmentItem.optional(),
    temper_C: treatmentItem.optional(),
    soak: z.string(),
    baths: z.array(z.string()),
    cycles: z.string(),
  }),
  temper: z.array(
    z.strictObject({ temperature_C: z.number(), hold_h: z.number(), times: z.number().optional(), hardness_HRC: figureSchema }),
  ),
  /** Other names of the same or a near steel; `near` says that the limits differ. */
  alsoKnownAs: z.array(z.strictObject({ name: z.string(), system: z.string(), near: z.boolean() })),
  /** Where published sources give unlike figures: both, with their source. */
  clashes: z.array(
    z.strictObject({ what: z.string(), figures: z.array(z.strictObject({ says: z.string(), source: z.string() })) }),
  ),
  warnings: z.array(z.string()),
  assumptions: z.array(z.strictObject({ says: z.string(), because: z.string() })),
})
export type SteelAnswer = z.infer<typeof steelAnswerSchema>

/** One change of the job document, as `applyEdits` takes it: without `insert` and `value` what stands there goes. */
const jobEdit = z.strictObject({
  path: z.array(z.union([z.string(), z.number()])),
  value: z.unknown().optional(),
  insert: z.unknown().optional(),
})

export const findingSchema = z.strictObject({
  id: z.enum(FINDING_IDS),
  severity: z.enum(['stop', 'warn', 'note']),
  /** Where on the piece, and at which step (its index in `steps`), if it has a place. */
  where: z.strictObject({ x_mm: z.number().optional(), zone: z.string().optional(), step: z.number().optional() }).optional(),
  says: z.string(),
  because: z.string(),
  remedy: z.string(),
  /** The remedy as changes of the job document to try and take back, the best first; absent where nothing in the job mends it. */
  try: z
    .array(z.strictObject({ says: z.string(), edits: z.array(jobEdit) }))
    .max(3)
    .optional(),
  /** Said where a person can be hurt; never left out of a card. */
  caution: z.string().optional(),
})
export type Finding = z.infer<typeof findingSchema>

const sectionPlace = z.strictObject({
  peak_C: z.number(),
  soak_s: z.number(),
  cooling_800_500_s: z.number().nullable(),
  quenched_HRC: z.number(),
  tempered_HRC: z.number(),
})
const roundOff = z.strictObject({ cooling_pct: z.number(), quenched_HRC: z.number(), tempered_HRC: z.number() })

const hardnessAlong = z.strictObject({
  x_mm: z.number(),
  skin_quenched_HRC: figureSchema,
  skin_tempered_HRC: figureSchema,
  centre_quenched_HRC: figureSchema,
  centre_tempered_HRC: figureSchema,
})

/** Share of the metal that the quench left austenite, what of it is left after all tempers, and what is fresh martensite that none came after; from 0.02 on. */
const austeniteShare = z.strictObject({ quenched: z.number(), left: z.number(), fresh: z.number() })

export const forecastSchema = z.strictObject({
  piece: z.string(),
  steel: z.string(),
  /** `sketch` follows a dragged handle, `draft` is the coarse, quick answer. */
  grade: z.enum(['sketch', 'draft', 'normal', 'fine']),
  members: z.number(),
  seed: z.number(),
  steps: z.array(
    z.strictObject({
      do: z.string(),
      in: z.string().optional(),
      start_s: z.number(),
      end_s: z.number(),
      /** What to do and what to look for, in a smith's words. */
      says: z.string(),
      cautions: z.array(z.string()),
      /** What the steel is to come to in the fire or by its colours, and what the oven is set to. */
      to_C: z.number().optional(),
      at_C: z.number().optional(),
      /** At its end, at the place of `curves`: skin and middle. A quench ends when the piece comes out, a temper when it is cold again. */
      skin_C: z.number().optional(),
      centre_C: z.number().optional(),
      /** How often it is done, where that is more than once. */
      times: z.number().optional(),
      /** Colours that heat left in the body runs to the working end: what it shows and how hot it truly is at the stop, and what there is of time. */
      colours: z
        .strictObject({
          /** From the lift to the stop; null when the heat was not enough. */
          reached_s: z.number().nullable(),
          edge_C: z.number(),
          /** By the film grown over the whole history, and the heat that tables give that colour; absent where there is none to see. */
          colour: z.string().optional(),
          byColour_C: z.number().optional(),
          /** One sigma of what a colour says. */
          within_K: z.number(),
          rise_K_per_s: z.number(),
          edge_HRC: z.number().optional(),
          /** Hardness that a second too soon leaves over, and a second too late takes away. */
          early_HRC_per_s: z.number().optional(),
          late_HRC_per_s: z.number().optional(),
          /** From when to when after the lift the working end is within its aim; until null: as long as it was followed. */
          window_s: z.strictObject({ from: z.number(), until: z.number().nullable() }).optional(),
          /** Hardness along the tool, stopped when it should be. */
          along: z.array(z.strictObject({ x_mm: z.number(), HRC: z.number() })).optional(),
        })
        .optional(),
      /** The same in few words, for a card: what to do, what to look for, and every caution in its order. */
      inShort: z.strictObject({ does: z.string(), look: z.string().optional(), cautions: z.array(z.string()) }).optional(),
    }),
  ),
  probes: z.array(
    z.strictObject({
      name: z.string(),
      x_mm: z.number(),
      r_mm: z.number(),
      peak_C: z.number(),
      cooling_800_500_s: z.number().nullable(),
      quenched_HRC: figureSchema,
      tempered_HRC: figureSchema,
      quenched_HV: figureSchema,
      tempered_HV: figureSchema,
      austenite_share: austeniteShare.optional(),
    }),
  ),
  zones: z.array(
    z.strictObject({
      name: z.string(),
      from_mm: z.number(),
      to_mm: z.number(),
      aim: z.string(),
      assumed: z.boolean(),
      quenched_HRC: figureSchema,
      tempered_HRC: figureSchema,
      tempered_HV: figureSchema,
      /** At the place of the zone that keeps most. */
      austenite_share: austeniteShare.optional(),
      /** Chance that the whole zone meets its aim. */
      chance: z.number(),
    }),
  ),
  findings: z.array(findingSchema),
  /**
   * The skin of each hard zone after all the fires of the process, where it came hottest; not in a sketch. Depths are under the metal's present
   * surface, beneath its scale; hardness elsewhere in the answer is that of the steel underneath.
   */
  skin: z
    .array(
      z.strictObject({
        where: z.strictObject({ x_mm: z.number(), zone: z.string().optional() }),
        /** Lying on after the treatment, and the metal that went into scale in all. */
        scale_mm: figureSchema,
        metalLost_mm: figureSchema,
        /** Until nine tenths of the bar's carbon stand. */
        decarburised_mm: figureSchema,
        /** Until the finished hardness is within 1 HRC of that underneath. */
        grindOff_mm: figureSchema,
        surface_HRC: figureSchema,
        thickness_mm: z.number(),
        /** What a file judges right out of the quench: its outermost 0.08 mm, and the steel under the skin. */
        fileReads: z.strictObject({ skin_HRC: figureSchema, under_HRC: figureSchema, says: z.string() }),
        profile: z.array(
          z.strictObject({
            depth_mm: z.number(),
            carbon_wtpct: figureSchema,
            quenched_HRC: figureSchema,
            hardness_HRC: figureSchema,
          }),
        ),
      }),
    )
    .optional(),
  assumptions: z.array(z.strictObject({ says: z.string(), because: z.string() })),
  sources: z.array(z.string()),
  /** For the pictures. */
  critical: z.strictObject({ ac1_C: z.number(), ac3_C: z.number(), ms_C: z.number() }),
  /** Half outline from the axis at the working end to the axis at the other end [mm, mm]; non-round sections as their equivalent round. */
  outline_mm: z.array(z.tuple([z.number(), z.number()])),
  length_mm: z.number(),
  /** The true sections from the working end, for the measures beside a drawing of their equivalent rounds: size at `from_mm`, at `to_mm`. */
  sections: z
    .array(
      z.strictObject({
        from_mm: z.number(),
        to_mm: z.number(),
        shape: z.enum(['round', 'square', 'hexagon', 'octagon', 'flat']),
        across_mm: z.tuple([z.number(), z.number()]),
        /** Of a flat, where `across_mm` is its thickness. */
        width_mm: z.tuple([z.number(), z.number()]).optional(),
      }),
    )
    .optional(),
  /**
   * True cross-sections that are not round, solved across where a zone or a place lies on one; not in a sketch. Best estimates; the face and the
   * corner stand beside the skin of the equivalent round, the middle beside its axis.
   */
  crossSections: z
    .array(
      z.strictObject({
        name: z.string(),
        shape: z.enum(['round', 'square', 'hexagon', 'octagon', 'flat']),
        x_mm: z.number(),
        across_mm: z.number(),
        width_mm: z.number().optional(),
        centre: sectionPlace,
        face: sectionPlace,
        corner: sectionPlace,
        /** How far the equivalent round is off: how much longer it takes from 800 to 500 degC, how much harder it reads. */
        equivalentRound: z.strictObject({ across_mm: z.number(), centre: roundOff, face: roundOff, corner: roundOff }),
        /** Its zone is judged by corner and face as well. */
        judged: z.boolean(),
      }),
    )
    .optional(),
  baths: z.array(
    z.strictObject({
      step: z.number(),
      name: z.string(),
      kind: z.string(),
      start_C: z.number(),
      end_C: z.number(),
      /** How far up the piece the liquid stands; null: the whole piece is under. */
      line_mm: z.number().nullable(),
    }),
  ),
  along: z.array(hardnessAlong),
  /** Temperature of the skin and of the middle at one place, through the whole treatment. */
  curves: z.strictObject({
    x_mm: z.number(),
    time_s: z.array(z.number()),
    skin_C: z.array(z.number()),
    centre_C: z.array(z.number()),
  }),
  /**
   * What the last temper would give at other temperatures, where the piece came hardest out of the bath: for the hold and rounds of step
   * `step`. `temperature_C` is the steel's own; an oven that reads low stands `reads_low_C` hotter than its dial.
   */
  temperCurve: z
    .strictObject({
      zone: z.string().optional(),
      step: z.number(),
      hold_h: z.number(),
      times: z.number(),
      quenched_HRC: figureSchema,
      points: z.array(z.strictObject({ temperature_C: z.number(), hardness_HRC: figureSchema })),
      oven: z.strictObject({ name: z.string(), max_C: z.number(), reads_low_C: z.number(), swing_C: z.number() }).optional(),
    })
    .optional(),
  /** Hardness over the cut piece, node by node; only when asked for. */
  field: z
    .strictObject({
      x_mm: z.array(z.number()),
      r_mm: z.array(z.number()),
      triangles: z.array(z.number()),
      quenched_HRC: z.array(z.number()),
      tempered_HRC: z.array(z.number()),
    })
    .optional(),
})
export type Forecast = z.infer<typeof forecastSchema>

export const routesSchema = z.strictObject({
  routes: z.array(
    z.strictObject({
      /** What the route is, in one line. */
      says: z.string(),
      /** Steps in the words of a job file; `process:` of a job takes them as they stand. */
      process: z.array(z.record(z.string(), z.unknown())),
      forecast: forecastSchema,
      /** Chance that every zone meets its aim. */
      chance: z.number(),
      holdsGear: z.boolean(),
    }),
  ),
  none: z.strictObject({ because: z.string(), nearest: z.string() }).optional(),
  /** Routes that were left out on purpose, with the reason. */
  refused: z.array(z.strictObject({ says: z.string(), because: z.string() })),
})
export type Routes = z.infer<typeof routesSchema>
