import { useRoute } from 'preact-iso'
import { type ProblemName, problems } from '#api/contract/problem.ts'
import { NotFoundPage } from '#web/pages/not-found-page.tsx'
import { whatToDo } from '#web/pages/problem/what-to-do.ts'
import { PageTitle } from '#web/parts/page-title.tsx'
import { PlainTable } from '#web/parts/plain-table.tsx'

/** What a refusal means and what to do about it: the address that every refusal names as its type. */
export function ProblemPage() {
  const { params } = useRoute()
  const name = params.name ?? ''
  if (!isProblem(name)) return <NotFoundPage />
  const names = Object.keys(problems).filter(isProblem)
  return (
    <div class="stack-wide">
      <div class="stack">
        <PageTitle>{problems[name].title}</PageTitle>
        <p class="lead">{whatToDo[name]}</p>
        <p class="soft">
          Refused as <code>{name}</code>, status {problems[name].status}.
        </p>
      </div>
      <PlainTable
        name="Everything that can be refused"
        data={{
          head: [
            { words: 'Name' },
            { words: 'Status', figure: true },
            { words: 'What it is' },
            { words: 'What to do' },
          ],
          rows: names.map((it) => ({
            key: it,
            cells: [it, String(problems[it].status), problems[it].title, whatToDo[it]],
            chosen: it === name,
          })),
        }}
      />
    </div>
  )
}

function isProblem(name: string): name is ProblemName {
  return Object.hasOwn(problems, name)
}
