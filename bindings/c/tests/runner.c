/* Calls what it is asked to on its standard input, for `bindings/checks/spoken.py`: a key and a JSON text, each behind its
   length in four bytes, the low one first. It answers with the status and the text, in the same way. */

#include "bismar.h"

#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static bool length_of(uint32_t *length) {
  unsigned char bytes[4];
  if (fread(bytes, 1, 4, stdin) != 4) return false;
  *length = bytes[0] | (uint32_t)bytes[1] << 8 | (uint32_t)bytes[2] << 16 | (uint32_t)bytes[3] << 24;
  return true;
}

/* In memory of exactly its size, so that the sanitizer sees one byte too many. */
static char *text(uint32_t *length) {
  if (!length_of(length)) return NULL;
  char *bytes = malloc(*length > 0 ? *length : 1);
  if (bytes == NULL || fread(bytes, 1, *length, stdin) != *length) exit(1);
  return bytes;
}

static void put(uint32_t number) {
  const unsigned char bytes[4] = {number & 255, number >> 8 & 255, number >> 16 & 255, number >> 24 & 255};
  fwrite(bytes, 1, 4, stdout);
}

int main(void) {
  uint32_t key_length, given_length;
  for (char *key; (key = text(&key_length)) != NULL;) {
    char *given = text(&given_length);
    BismarBytes answer;
    BismarStatus status;
    if (key_length == 4 && memcmp(key, "keys", 4) == 0) {
      status = bismar_keys(&answer);
    } else {
      status = bismar_call(key, key_length, given, given_length, &answer);
    }
    put((uint32_t)status), put((uint32_t)answer.length);
    fwrite(answer.data, 1, answer.length, stdout);
    fflush(stdout);
    bismar_free(&answer);
    free(key), free(given);
  }
  return 0;
}
