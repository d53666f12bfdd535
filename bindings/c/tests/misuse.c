/* The interface as a caller meets it, and as one misuses it. Built with the address and undefined sanitizers, so that a
   byte read or written out of place, or one that is not given back, ends it. Argument: a folder with demo-log.json and
   demo-plan.json. With "memory" behind it, only the bad calls with the memory watched, for a build without sanitizers. */

#include "bismar.h"
#include "files.h"

#include <math.h>
#include <pthread.h>
#include <stdbool.h>
#include <unistd.h>

static int checked = 0;

static void check(bool held, const char *what, int line) {
  checked += 1;
  if (!held) {
    fprintf(stderr, "misuse.c:%d: not so: %s\n", line, what);
    exit(1);
  }
}
#define CHECK(condition) check((condition), #condition, __LINE__)

static const char EPLEY[] = "one_rm.epley_1985";
static const char GIVEN[] = "{\"load\":{\"kg\":100},\"reps\":15}";
#define TEXT(literal) (literal), (sizeof(literal) - 1)

static bool says(const BismarBytes *bytes, const char *part) {
  return bytes->data != NULL && strstr(bytes->data, part) != NULL;
}

/* Whether it was refused with that code; gives the error back. */
static bool refused(BismarStatus status, BismarBytes *error, const char *code) {
  char wanted[80];
  snprintf(wanted, sizeof wanted, "\"code\":\"%s\"", code);
  const bool held = status == BISMAR_STATUS_REFUSED && says(error, wanted) && says(error, "\"message\":\"") &&
                    error->data[error->length] == 0 && strlen(error->data) == error->length;
  if (!held) fprintf(stderr, "status %d: %s\n", (int)status, error->data ? error->data : "no bytes");
  bismar_free(error);
  return held;
}

static void calls(void) {
  BismarBytes answer;
  CHECK(bismar_version()[0] != 0);
  CHECK(bismar_keys(&answer) == BISMAR_STATUS_ANSWERED && says(&answer, "\"answers.day\""));
  bismar_free(&answer);
  /* 100 * (1 + 15 / 30), by hand. */
  CHECK(bismar_call(TEXT(EPLEY), TEXT(GIVEN), &answer) == BISMAR_STATUS_ANSWERED);
  CHECK(strcmp(answer.data, "{\"kg\":150}") == 0);
  bismar_free(&answer);
  CHECK(answer.data == NULL && answer.length == 0);
  bismar_free(&answer);
  bismar_free(NULL);
  CHECK(bismar_keys(NULL) == BISMAR_STATUS_MISUSED);
  CHECK(bismar_call(TEXT(EPLEY), TEXT(GIVEN), NULL) == BISMAR_STATUS_MISUSED);
  CHECK(refused(bismar_call(NULL, 3, TEXT(GIVEN), &answer), &answer, "null_not_allowed"));
  CHECK(refused(bismar_call(TEXT(EPLEY), NULL, 0, &answer), &answer, "null_not_allowed"));
  CHECK(refused(bismar_call(TEXT(EPLEY), GIVEN, SIZE_MAX, &answer), &answer, "too_long"));
  CHECK(refused(bismar_call(TEXT(EPLEY), GIVEN, SIZE_MAX / 2 + 1, &answer), &answer, "too_long"));
  CHECK(refused(bismar_call(TEXT(EPLEY), GIVEN, 0, &answer), &answer, "not_json"));
  CHECK(refused(bismar_call(TEXT("nobody.knows"), TEXT(GIVEN), &answer), &answer, "unknown_function"));
  CHECK(refused(bismar_call(TEXT("one_rm.epley_1985\0"), TEXT(GIVEN), &answer), &answer, "unknown_function"));
  CHECK(refused(bismar_call(TEXT("\xff\xfe"), TEXT(GIVEN), &answer), &answer, "unknown_function"));
  CHECK(refused(bismar_call(TEXT(EPLEY), TEXT("{\"load\":\"\xc3\"}"), &answer), &answer, "not_json"));
  CHECK(refused(bismar_call(TEXT(EPLEY), TEXT("{\"load\":{\"kg\":100},\"reps\":300}"), &answer), &answer, "out_of_range"));
  CHECK(refused(bismar_call(TEXT(EPLEY), TEXT("{\"load\":{\"kg\":100},\"reps\":1,\"x\":1}"), &answer), &answer, "unknown_field"));
  CHECK(refused(bismar_call(TEXT(EPLEY), TEXT("{\"reps\":1,\"reps\":1}"), &answer), &answer, "duplicate_field"));
}

/* Every beginning of a text, each in memory of exactly its size. */
static void truncated(void) {
  for (size_t length = 0; length < sizeof GIVEN - 1; length += 1) {
    char *part = exactly(GIVEN, length);
    BismarBytes answer;
    CHECK(refused(bismar_call(TEXT(EPLEY), part, length, &answer), &answer, "not_json"));
    free(part);
  }
  for (size_t length = 0; length < sizeof EPLEY - 1; length += 1) {
    char *part = exactly(EPLEY, length);
    BismarBytes answer;
    CHECK(refused(bismar_call(part, length, TEXT(GIVEN), &answer), &answer, "unknown_function"));
    free(part);
  }
  enum { DEEP = 200000 };
  char *deep = malloc(DEEP);
  memset(deep, '[', DEEP);
  BismarBytes answer;
  CHECK(refused(bismar_call(TEXT(EPLEY), deep, DEEP, &answer), &answer, "not_json"));
  free(deep);
}

static void flats(void) {
  BismarBytes error;
  double found = 1, numbers[] = {100, 15};
  CHECK(bismar_flat(TEXT(EPLEY), numbers, 2, &found, &error) == BISMAR_STATUS_ANSWERED && found == 150);
  CHECK(error.data == NULL);
  found = 7;
  CHECK(refused(bismar_flat(TEXT(EPLEY), numbers, 1, &found, &error), &error, "wrong_type") && found == 7);
  CHECK(refused(bismar_flat(TEXT(EPLEY), NULL, 2, &found, &error), &error, "null_not_allowed"));
  CHECK(refused(bismar_flat(TEXT(EPLEY), NULL, 0, &found, &error), &error, "wrong_type"));
  CHECK(refused(bismar_flat(TEXT(EPLEY), numbers, 2, NULL, &error), &error, "null_not_allowed"));
  CHECK(refused(bismar_flat(TEXT(EPLEY), numbers, SIZE_MAX / 4, &found, &error), &error, "too_long"));
  CHECK(refused(bismar_flat(TEXT("answers.day"), numbers, 2, &found, &error), &error, "unknown_function"));
  const double *odd = (const double *)((const char *)numbers + 1);
  CHECK(refused(bismar_flat(TEXT(EPLEY), odd, 1, &found, &error), &error, "wrong_type"));
  CHECK(bismar_flat(TEXT(EPLEY), numbers, 2, &found, NULL) == BISMAR_STATUS_MISUSED);
  numbers[0] = NAN;
  CHECK(bismar_flat(TEXT(EPLEY), numbers, 2, &found, &error) == BISMAR_STATUS_REFUSED);
  CHECK(says(&error, "\"value\":\"NaN\""));
  bismar_free(&error);
  numbers[0] = -INFINITY;
  CHECK(bismar_flat(TEXT(EPLEY), numbers, 2, &found, &error) == BISMAR_STATUS_REFUSED);
  CHECK(says(&error, "\"value\":\"-Infinity\""));
  bismar_free(&error);
}

static void batches(void) {
  enum { ROWS = 3000 };
  double *loads = malloc(ROWS * sizeof *loads), *reps = malloc(ROWS * sizeof *reps), *out = malloc(ROWS * sizeof *out);
  for (int row = 0; row < ROWS; row += 1) {
    loads[row] = 20 + (row % 1200) * 0.1;
    reps[row] = 1 + (row % 20) * 0.5;
  }
  BismarBytes error;
  size_t count = 9;
  const BismarColumn both[] = {{loads, 0}, {reps, 0}}, fives[] = {{loads, 0}, {NULL, 5}};
  static const char *const keys[] = {"one_rm.epley_1985", "one_rm.brzycki_1993", "one_rm.mayhew_1992", "one_rm.epley_1985_load"};
  for (size_t at = 0; at < sizeof keys / sizeof *keys; at += 1) {
    const size_t length = strlen(keys[at]);
    CHECK(bismar_batch(keys[at], length, both, 2, out, ROWS, NULL, &error) == BISMAR_STATUS_ANSWERED);
    for (int row = 0; row < ROWS; row += 1) {
      const double given[] = {loads[row], reps[row]};
      double one = 0;
      CHECK(bismar_flat(keys[at], length, given, 2, &one, &error) == BISMAR_STATUS_ANSWERED);
      CHECK(memcmp(&one, &out[row], sizeof one) == 0);
    }
  }
  CHECK(bismar_batch(TEXT(EPLEY), fives, 2, out, ROWS, &count, &error) == BISMAR_STATUS_ANSWERED && count == 0);
  CHECK(bismar_batch(TEXT(EPLEY), both, 2, NULL, 0, NULL, &error) == BISMAR_STATUS_ANSWERED);
  loads[40] = -1;
  loads[50] = NAN;
  CHECK(bismar_batch(TEXT(EPLEY), both, 2, out, ROWS, NULL, &error) == BISMAR_STATUS_REFUSED && says(&error, "[40]"));
  bismar_free(&error);
  CHECK(bismar_batch(TEXT(EPLEY), both, 2, out, ROWS, &count, &error) == BISMAR_STATUS_ANSWERED);
  CHECK(count == 2 && isnan(out[40]) && isnan(out[50]) && out[41] > 0);
  CHECK(refused(bismar_batch(TEXT(EPLEY), both, 1, out, ROWS, NULL, &error), &error, "wrong_type"));
  CHECK(refused(bismar_batch(TEXT(EPLEY), NULL, 2, out, ROWS, NULL, &error), &error, "null_not_allowed"));
  CHECK(refused(bismar_batch(TEXT(EPLEY), both, 2, NULL, ROWS, NULL, &error), &error, "null_not_allowed"));
  CHECK(refused(bismar_batch(TEXT(EPLEY), both, 2, out, SIZE_MAX / 4, NULL, &error), &error, "too_long"));
  CHECK(refused(bismar_batch(TEXT(EPLEY), both, 2, loads, ROWS, NULL, &error), &error, "wrong_type"));
  CHECK(refused(bismar_batch(TEXT(EPLEY), both, 2, reps + 1, ROWS - 1, NULL, &error), &error, "wrong_type"));
  CHECK(refused(bismar_batch(TEXT(EPLEY), &fives[1], 1, out, ROWS, NULL, &error), &error, "wrong_type"));
  CHECK(bismar_batch(TEXT(EPLEY), both, 2, out, ROWS, NULL, NULL) == BISMAR_STATUS_MISUSED);
  free(loads), free(reps), free(out);
}

static char *log_given, *session_given;

static uint64_t opened(void) {
  BismarBytes error;
  uint64_t state = 0;
  CHECK(bismar_open(log_given, strlen(log_given), &state, &error) == BISMAR_STATUS_ANSWERED && state > 0);
  return state;
}

static const char EVENT[] = "{\"sequence\":100000,\"day\":\"2026-08-27\",\"kind\":{\"body_mass_recorded\":{\"kg\":81}}}";
static const char LATE[] = "{\"sequence\":100001,\"day\":\"2025-01-01\",\"kind\":{\"body_mass_recorded\":{\"kg\":81}}}";

static void states(void) {
  BismarBytes answer, whole;
  const uint64_t state = opened();
  CHECK(bismar_open_states() == 1);
  CHECK(bismar_call(TEXT("prescription.next_session"), session_given, strlen(session_given), &whole) == BISMAR_STATUS_ANSWERED);
  const char *asked = strstr(session_given, "\"plan\":");
  char *question = joined("{", asked, "");
  CHECK(bismar_ask(state, TEXT("next_session"), question, strlen(question), &answer) == BISMAR_STATUS_ANSWERED);
  CHECK(strcmp(answer.data, whole.data) == 0);
  bismar_free(&answer), bismar_free(&whole);
  /* The same in sentences: what is to be shown comes first, and a stop in front of it. */
  char *in_words = joined("{\"unit\":\"lb\",", session_given + 1, "");
  CHECK(bismar_call(TEXT("text.session"), in_words, strlen(in_words), &answer) == BISMAR_STATUS_ANSWERED);
  CHECK(strncmp(answer.data, "{\"sheet\":{\"stop\":[", 18) == 0 && says(&answer, " lb,"));
  bismar_free(&answer), free(in_words);
  CHECK(refused(bismar_call(TEXT("text.session"), session_given, strlen(session_given), &answer), &answer, "missing_field"));
  CHECK(bismar_apply(state, TEXT(EVENT), &answer) == BISMAR_STATUS_ANSWERED && answer.data == NULL);
  CHECK(bismar_ask(state, TEXT("state"), TEXT("{}"), &whole) == BISMAR_STATUS_ANSWERED);
  CHECK(refused(bismar_apply(state, TEXT(LATE), &answer), &answer, "needs_refold"));
  for (size_t length = 0; length < sizeof EVENT - 1; length += 1) {
    char *part = exactly(EVENT, length);
    CHECK(refused(bismar_apply(state, part, length, &answer), &answer, "not_json"));
    free(part);
  }
  CHECK(bismar_ask(state, TEXT("state"), TEXT("{}"), &answer) == BISMAR_STATUS_ANSWERED);
  CHECK(strcmp(answer.data, whole.data) == 0);
  bismar_free(&answer), bismar_free(&whole);
  CHECK(refused(bismar_apply(state, NULL, 1, &answer), &answer, "null_not_allowed"));
  CHECK(refused(bismar_ask(state, TEXT("apply"), TEXT(EVENT), &answer), &answer, "unknown_variant"));
  CHECK(refused(bismar_ask(state, TEXT("decide"), TEXT("{}"), &answer), &answer, "missing_field"));
  CHECK(refused(bismar_ask(state, NULL, 0, TEXT("{}"), &answer), &answer, "null_not_allowed"));
  CHECK(refused(bismar_open(log_given, strlen(log_given), NULL, &answer), &answer, "null_not_allowed"));
  CHECK(refused(bismar_open(log_given, strlen(log_given) / 2, &(uint64_t){0}, &answer), &answer, "not_json"));
  CHECK(bismar_open_states() == 1);
  CHECK(bismar_close(state) == 1 && bismar_close(state) == 0 && bismar_close(0) == 0 && bismar_close(UINT64_MAX) == 0);
  CHECK(refused(bismar_ask(state, TEXT("state"), TEXT("{}"), &answer), &answer, "not_ready"));
  CHECK(refused(bismar_apply(state, TEXT(EVENT), &answer), &answer, "not_ready"));
  const uint64_t next = opened();
  CHECK(next != state && bismar_close(next) == 1 && bismar_open_states() == 0);
  free(question);
}

static void *asks(void *argument) {
  const uint64_t state = *(const uint64_t *)argument;
  long wrong = 0;
  for (int at = 0; at < 200; at += 1) {
    BismarBytes answer;
    if (bismar_ask(state, TEXT("decide"), TEXT("{\"today\":\"2026-08-27\"}"), &answer) != BISMAR_STATUS_ANSWERED) wrong += 1;
    bismar_free(&answer);
    if (bismar_call(TEXT(EPLEY), TEXT(GIVEN), &answer) != BISMAR_STATUS_ANSWERED) wrong += 1;
    bismar_free(&answer);
    if (at % 40 == 0) {
      uint64_t own = 0;
      if (bismar_open(log_given, strlen(log_given), &own, &answer) != BISMAR_STATUS_ANSWERED) wrong += 1;
      if (bismar_close(own) != 1) wrong += 1;
    }
  }
  return (void *)wrong;
}

/* One closes while the other still asks: whoever comes late is refused, and nothing else happens. */
static void *closes(void *argument) {
  usleep(2000);
  return (void *)(long)(bismar_close(*(const uint64_t *)argument) != 1);
}

static void threads(void) {
  uint64_t state = opened();
  pthread_t one, two;
  void *wrong_one, *wrong_two;
  pthread_create(&one, NULL, asks, &state), pthread_create(&two, NULL, asks, &state);
  pthread_join(one, &wrong_one), pthread_join(two, &wrong_two);
  CHECK(wrong_one == NULL && wrong_two == NULL && bismar_open_states() == 1);
  pthread_create(&one, NULL, asks, &state), pthread_create(&two, NULL, closes, &state);
  pthread_join(one, NULL), pthread_join(two, &wrong_two);
  CHECK(wrong_two == NULL && bismar_open_states() == 0);
}

static void bad_call(int at, uint64_t state) {
  BismarBytes answer;
  double loads[100], reps[100];
  char text[120];
  int length = snprintf(text, sizeof text, "{\"load\":{\"kg\":-%d},\"reps\":8}", at + 1);
  uint64_t none = 0;
  BismarStatus status = BISMAR_STATUS_ANSWERED;
  switch (at % 6) {
    case 0: status = bismar_call(TEXT(EPLEY), text, (size_t)length, &answer); break;
    case 1: status = bismar_call(TEXT("progression.fold"), TEXT("{\"log\":{\"format\":\"bismar-log\",\"version\":99}}"), &answer); break;
    case 2:
      for (int row = 0; row < 100; row += 1) loads[row] = -1, reps[row] = 1;
      status = bismar_batch(TEXT(EPLEY), (const BismarColumn[]){{loads, 0}, {reps, 0}}, 2, loads + 100, 0, NULL, &answer);
      if (status == BISMAR_STATUS_ANSWERED) status = bismar_flat(TEXT(EPLEY), loads, 100, &loads[0], &answer);
      break;
    case 3: status = bismar_apply(state, TEXT(LATE), &answer); break;
    case 4: status = bismar_open(text, (size_t)length, &none, &answer); break;
    default: status = bismar_ask((uint64_t)at + 1000000, TEXT("state"), TEXT("{}"), &answer); break;
  }
  CHECK(status == BISMAR_STATUS_REFUSED);
  bismar_free(&answer);
}

static long resident(void) {
  long pages = 0, all = 0;
  FILE *file = fopen("/proc/self/statm", "r");
  CHECK(file != NULL && fscanf(file, "%ld %ld", &all, &pages) == 2);
  fclose(file);
  return pages * sysconf(_SC_PAGESIZE);
}

static void memory(void) {
  const uint64_t state = opened();
  for (int at = 0; at < 2000; at += 1) bad_call(at, state);
  const long before = resident();
  for (int at = 0; at < 10000; at += 1) bad_call(at, state);
  const long grown = resident() - before;
  printf("c: memory after 10000 bad calls: %ld B more\n", grown);
  CHECK(grown < 300000);
  CHECK(bismar_close(state) == 1);
}

int main(int count, char **words) {
  if (count < 2) return 2;
  char *log = file_text(words[1], "demo-log.json"), *plan = file_text(words[1], "demo-plan.json");
  log_given = joined("{\"log\":", log, "}");
  char *head = joined("{\"log\":", log, ",\"plan\":");
  session_given = joined(head, plan, ",\"today\":\"2026-08-27\"}");
  if (count > 2 && strcmp(words[2], "memory") == 0) {
    memory();
  } else {
    calls(), truncated(), flats(), batches(), states(), threads();
    printf("c: %d checks of use and misuse held\n", checked);
  }
  free(log), free(plan), free(head), free(log_given), free(session_given);
  return 0;
}
