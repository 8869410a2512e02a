import { describe, expect, it } from 'vitest'
import { ofDraft, ofRecord, sent, type Editing } from './editing'

const draft = {
  audience: 'public', rhythm: 'weekly', title: 'T', from: '2026-11-24', since: '', snapshot: 'ab', text: 'x', holds: [],
  photos: [{ id: 'p1', title: '', sha256: '', date: '', moment: '' }, { id: 'p2', title: '', sha256: '', date: '', moment: '' }],
}

describe('an update while it is edited', () => {
  it('is seen by nobody outside until it is published', () => {
    const e = ofDraft(draft, '2026-11-30')
    expect(sent(e, 'draft').mark).toBe('board')
    expect(sent(e, 'published').mark).toBe('public')
    expect(sent({ ...e, audience: 'donors' }, 'published').mark).toBe('public')
    expect(sent({ ...e, audience: 'board' }, 'published').mark).toBe('board')
  })

  it('keeps the snapshot its figures come from, and the first photograph', () => {
    expect(sent(ofDraft(draft, '2026-11-30'), 'draft').body).toEqual({
      rhythm: 'weekly', title: 'T', audience: 'public', text: 'x', photos: ['p1'], state: 'draft', date: '2026-11-30', snapshot: 'ab',
    })
  })

  it('loses no field of the record it does not show', () => {
    const entry = { id: 'u', kind: 'update', version: 3, body: { title: 'T', author: 'curator', about: ['m'], notes: 'n', state: 'published', correction: 'before' } }
    const e: Editing = { ...ofRecord(entry as never), why: '' }
    expect(sent(e, 'published').body).toMatchObject({ author: 'curator', about: ['m'], notes: 'n', correction: 'before' })
    expect(sent({ ...e, why: 'now' }, 'published').body.correction).toBe('now')
  })
})
