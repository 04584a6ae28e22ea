import { Button } from '@mantine/core'
import { useState } from 'react'
import { type Backup, useBackups, useBackupWork } from '../../data/backups.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { moment, plain } from '../../words/format.ts'
import { Refusal } from './Fields.tsx'

/** How many are listed before the rest is asked for. */
const first = 5

/** Copies of the database: when the last was made, whether one was proven, and both by a press. */
export function Backups() {
  const texts = words().backups
  const backups = useBackups()
  const { make, prove } = useBackupWork()
  const [all, setAll] = useState(false)
  if (backups.isPending) return <Loading what={texts.what} />
  if (backups.data === null)
    return (
      <section className="stack no-print">
        <h2>{texts.title}</h2>
        <p>{texts.elsewhere}</p>
      </section>
    )
  if (!backups.data)
    return <Trouble title={texts.notLoaded} error={backups.error} retry={() => void backups.refetch()} />
  const [newest] = backups.data
  const busy = make.isPending || prove.isPending
  return (
    <section className="stack no-print" aria-busy={busy}>
      <h2>{texts.title}</h2>
      <p>{texts.how}</p>
      <p role="status">
        {make.isPending ? texts.making : prove.isPending ? texts.proving : <Standing all={backups.data} />}
      </p>
      <div className="row">
        <Button variant="default" disabled={busy} onClick={() => make.mutate()}>
          {texts.make}
        </Button>
        <Button variant="default" disabled={busy || !newest} onClick={() => newest && prove.mutate(newest.name)}>
          {texts.proveNewest}
        </Button>
      </div>
      <Refusal error={make.error ?? prove.error} />
      {backups.data.length > 0 && (
        <div className="scroll people-table people-copies" tabIndex={0} role="region" aria-label={texts.title}>
          <table className="tide">
            <thead>
              <tr>
                <th scope="col">{texts.made}</th>
                <th scope="col">{texts.why}</th>
                <th scope="col" className="figure">
                  {texts.rows}
                </th>
                <th scope="col" className="figure">
                  {texts.size}
                </th>
                <th scope="col">{texts.proof}</th>
              </tr>
            </thead>
            <tbody>
              {backups.data.slice(0, all ? undefined : first).map((copy) => (
                <tr key={copy.name}>
                  <th scope="row">{moment(copy.madeAt)}</th>
                  <td>{copy.reason ? texts.reasons[copy.reason] : texts.noManifest}</td>
                  <td className="figure">{copy.rows === null ? '–' : plain(copy.rows, 0)}</td>
                  <td className="figure">{texts.megabytes(plain(copy.bytes / 1e6, 1))}</td>
                  <td>
                    <Proof copy={copy} />{' '}
                    <button
                      type="button"
                      className="opens small"
                      disabled={busy}
                      aria-label={texts.proveOf(moment(copy.madeAt))}
                      onClick={() => prove.mutate(copy.name)}
                    >
                      {texts.prove}
                    </button>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {!all && backups.data.length > first && (
        <Button variant="subtle" onClick={() => setAll(true)}>
          {texts.more(backups.data.length - first)}
        </Button>
      )}
      <p className="soft">{texts.restore}</p>
    </section>
  )
}

const isWhole = ({ proof }: Backup) => proof !== null && proof.faults.length === 0

function Standing({ all }: { all: readonly Backup[] }) {
  const texts = words().backups
  const [newest] = all
  if (!newest) return <>{texts.none}</>
  const proven = all.filter(isWhole).sort((a, b) => (a.proof!.provenAt < b.proof!.provenAt ? 1 : -1))[0]
  return (
    <>
      {texts.newest(moment(newest.madeAt))}{' '}
      {proven ? texts.lastProof(moment(proven.proof!.provenAt), proven.proof!.rows) : texts.neverProven}
    </>
  )
}

function Proof({ copy }: { copy: Backup }) {
  const texts = words().backups
  const { proof } = copy
  if (!proof) return <span className="soft">{texts.untried}</span>
  if (isWhole(copy)) return <span>{texts.isWhole(moment(proof.provenAt))}</span>
  return (
    <span role="alert">
      {texts.notWhole(moment(proof.provenAt))} <span className="soft">{proof.faults.join('; ')}</span>
    </span>
  )
}
