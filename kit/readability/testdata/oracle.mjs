// Writes the answers of other people's counters to passages.json and words.tsv, for
// the tests of this folder. None of the packages is needed to run those tests.
//
// It wants these packages for Node: text-readability 1.1.1, syllable 5.0.1, flesch
// 2.0.1, flesch-kincaid 2.0.1 and cmu-pronouncing-dictionary 3.0.0.
//
// text-readability counts words and sentences and rounds its averages to a tenth
// before it scores; syllable counts syllables by rules; flesch and flesch-kincaid are
// the formulas; cmu-pronouncing-dictionary has the sounds of words, of which we take
// how many are vowels.
import fs from 'node:fs'
import readability from 'text-readability'
import {syllable} from 'syllable'
import {flesch} from 'flesch'
import {fleschKincaid} from 'flesch-kincaid'
import {dictionary} from 'cmu-pronouncing-dictionary'

const packages = ['text-readability 1.1.1', 'syllable 5.0.1', 'flesch 2.0.1', 'flesch-kincaid 2.0.1']
const passages = fs.readFileSync('passages.txt', 'utf8').split(/^== /m).slice(1).map((block) => {
  const [name, ...lines] = block.trim().split('\n')
  const text = lines.join('\n').trim()
  const counts = {
    sentence: readability.sentenceCount(text),
    word: readability.lexiconCount(text),
    syllable: syllable(text)
  }
  return {
    name, sentences: counts.sentence, words: counts.word, syllables: counts.syllable,
    ease: flesch(counts), grade: fleschKincaid(counts),
    libraryEase: readability.fleschReadingEase(text), libraryGrade: readability.fleschKincaidGrade(text)
  }
})
fs.writeFileSync('passages.json', JSON.stringify({packages, passages}, null, 1) + '\n')

// The words are the first column of words.tsv: those of the passages, of our examples
// and of the trade. A word may be spoken in several ways: all counts are kept.
const words = fs.readFileSync('words.tsv', 'utf8').split('\n').map((line) => line.split('\t')[0])
const rows = words.filter((word) => word && !word.startsWith('#')).map((word) => {
  const ways = [word, ...[1, 2, 3].map((n) => `${word}(${n})`)].map((key) => dictionary[key]).filter(Boolean)
  const counts = ways.map((way) => way.match(/\d/g).length)
  return [word, [...new Set(counts)].sort().join(' ')]
}).filter(([, counts]) => counts)
fs.writeFileSync('words.tsv', '# cmu-pronouncing-dictionary 3.0.0: word, syllables in each way to say it\n' +
  rows.map((row) => row.join('\t')).join('\n') + '\n')
