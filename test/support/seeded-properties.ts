import fc from 'fast-check'

// The same cases in every run, so that a red run is red again; FC_SEED tries others.
fc.configureGlobal({ seed: Number(process.env.FC_SEED ?? 20260224) })
