/* Bismar: progression maths for barbell lifts, as a C interface. Generated from the library; do not edit.

   Texts and keys are UTF-8 of a given length and need no zero byte at their end. Objects are JSON with the names of the
   log's JSON.

   Memory. What you give stays yours; it is read during the call only and may go afterwards. What you get in a BismarBytes
   is the library's: give it back with bismar_free, once, in the same process. A place is written over without being freed
   first. A state that was opened is kept until it is closed.

   Threads. Every function may be called from every thread at once. Calls to one state wait for each other; calls to two
   do not. A place for an answer belongs to one call at a time. */

#ifndef BISMAR_H
#define BISMAR_H

#include <stddef.h>
#include <stdint.h>

/*
 How a call ended.
 */
enum BismarStatus
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /*
   There is an answer.
   */
  BISMAR_STATUS_ANSWERED = 0,
  /*
   The error is told as a JSON object: `code`, `field`, `message` in English, and where there are any `value`,
   `allowed` and `event`. A number in it that JSON cannot say is the text `NaN`, `Infinity` or `-Infinity`.
   */
  BISMAR_STATUS_REFUSED = 1,
  /*
   The place for the answer or the error is null, so that nothing was done and nothing can be told.
   */
  BISMAR_STATUS_MISUSED = 2,
  /*
   The library failed, which is a fault of its own; no bytes are told.
   */
  BISMAR_STATUS_FAILED = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum BismarStatus BismarStatus;
#else
typedef int32_t BismarStatus;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/*
 Bytes of the library, in UTF-8: to be given back with `bismar_free`. Behind the last one stands a zero byte that
 `length` does not count. `data` is null where there are none.
 */
typedef struct BismarBytes {
  /*
   The first of them.
   */
  char *data;
  /*
   How many they are.
   */
  size_t length;
} BismarBytes;

/*
 A column of a batch. Where `rows` is null, `same` stands in every row.
 */
typedef struct BismarColumn {
  /*
   A number for every row, or null.
   */
  const double *rows;
  /*
   The number of every row where `rows` is null.
   */
  double same;
} BismarColumn;

#ifdef __cplusplus
extern "C" {
#endif // __cplusplus

/*
 The version of the library, ended by a zero byte. It is there as long as the library is loaded and is not given back.
 */
const char *bismar_version(void);

/*
 Every key that `bismar_call` knows, as a JSON list of texts.

 # Safety
 `answer` is null or a place that can be written.
 */
BismarStatus bismar_keys(struct BismarBytes *answer);

/*
 Calls a function by its key. `given` is a JSON object of its arguments, `answer` the JSON text of what it gives.

 # Safety
 `key` and `given` are null or point to as many bytes as their lengths say; `answer` is null or a place that can be
 written.
 */
BismarStatus bismar_call(const char *key,
                         size_t key_length,
                         const char *given,
                         size_t given_length,
                         struct BismarBytes *answer);

/*
 Calls a function of numbers: masses in kg, lengths in mm, days in days from 1970-01-01. `answer` is written where the
 status is `BISMAR_STATUS_ANSWERED` only.

 # Safety
 `key` and `given` are null or point to as many bytes and numbers as their lengths say; `answer` and `error` are null or
 places that can be written.
 */
BismarStatus bismar_flat(const char *key,
                         size_t key_length,
                         const double *given,
                         size_t count,
                         double *answer,
                         struct BismarBytes *error);

/*
 Calls a function of numbers for every row of the columns, into `out`: bit for bit what a call for each would give.
 Where `refused` is null, the first row that the function refuses is the error, with its place behind the field, and what
 `out` holds means nothing; else such a row becomes NaN, and how many there were is written to `refused`.
 Where no column has rows of its own there can be one row only.

 # Safety
 `key`, `columns` and `out` are null or point to as many bytes, columns and numbers as their lengths say, and the `rows`
 of each column is null or points to `rows` numbers; `refused` and `error` are null or places that can be written. None of
 what is written lies over anything else that is given: `out` over a column is seen and refused.
 */
BismarStatus bismar_batch(const char *key,
                          size_t key_length,
                          const struct BismarColumn *columns,
                          size_t column_count,
                          double *out,
                          size_t rows,
                          size_t *refused,
                          struct BismarBytes *error);

/*
 Folds a log and keeps its state: `given` is `{"log": ...}`, and may name a stored `"state"`, which is taken instead where
 it is of use. `state` gets its number, which is never used again, not even after it is closed.

 # Safety
 `given` is null or points to as many bytes as its length says; `state` and `error` are null or places that can be
 written.
 */
BismarStatus bismar_open(const char *given,
                         size_t given_length,
                         uint64_t *state,
                         struct BismarBytes *error);

/*
 Tells a kept state one more event, a JSON object as in the log. A state that refuses it is as it was; `needs_refold` if
 the event changes the past.

 # Safety
 `event` is null or points to as many bytes as its length says; `error` is null or a place that can be written.
 */
BismarStatus bismar_apply(uint64_t state,
                          const char *event,
                          size_t event_length,
                          struct BismarBytes *error);

/*
 Asks a kept state: `decide` with `{"today": ...}`, `next_session` with `{"plan": ..., "today": ...}`, or `state` with
 `{}`, which is what to store for tomorrow.

 # Safety
 `question` and `given` are null or point to as many bytes as their lengths say; `answer` is null or a place that can be
 written.
 */
BismarStatus bismar_ask(uint64_t state,
                        const char *question,
                        size_t question_length,
                        const char *given,
                        size_t given_length,
                        struct BismarBytes *answer);

/*
 Gives a kept state back: 1 if there was one with that number, 0 if it was closed before or never was, which does no
 harm.
 */
int32_t bismar_close(uint64_t state);

/*
 How many states are open: for a test that none is forgotten.
 */
size_t bismar_open_states(void);

/*
 Gives bytes back, once; they are then empty, so that the same place may be given back again. Null does no harm.

 # Safety
 `bytes` is null, or holds what a function of this library wrote there last, unchanged.
 */
void bismar_free(struct BismarBytes *bytes);

#ifdef __cplusplus
}  // extern "C"
#endif  // __cplusplus

#endif  /* BISMAR_H */
