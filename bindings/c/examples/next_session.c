/* What does this lifter do today? Folds a log, keeps the state, and prints the answer as JSON.

     next_session LOG.json PLAN.json 2026-08-27 */

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bismar.h"

static char *read_file(const char *path) {
  FILE *file = fopen(path, "rb");
  if (file == NULL || fseek(file, 0, SEEK_END) != 0) return NULL;
  const long length = ftell(file);
  rewind(file);
  char *text = malloc((size_t)length + 1);
  if (text != NULL) text[fread(text, 1, (size_t)length, file)] = 0;
  fclose(file);
  return text;
}

static char *format(const char *pattern, const char *one, const char *two) {
  const size_t length = strlen(pattern) + strlen(one) + strlen(two) + 1;
  char *text = malloc(length);
  if (text != NULL) snprintf(text, length, pattern, one, two);
  return text;
}

int main(int count, char **words) {
  if (count != 4) return 2;
  char *log = read_file(words[1]), *plan = read_file(words[2]);
  if (log == NULL || plan == NULL) return 2;
  char *given = format("{\"log\":%s%s}", log, "");
  char *asked = format("{\"plan\":%s,\"today\":\"%s\"}", plan, words[3]);

  uint64_t state = 0;
  BismarBytes told;
  static const char question[] = "next_session";
  BismarStatus status = bismar_open(given, strlen(given), &state, &told);
  if (status == BISMAR_STATUS_ANSWERED) {
    status = bismar_ask(state, question, sizeof question - 1, asked, strlen(asked), &told);
    bismar_close(state);
  }
  fprintf(status == BISMAR_STATUS_ANSWERED ? stdout : stderr, "%s\n", told.data != NULL ? told.data : "");
  bismar_free(&told);
  free(log), free(plan), free(given), free(asked);
  return status == BISMAR_STATUS_ANSWERED ? 0 : 1;
}
