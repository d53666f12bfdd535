/* Texts for the tests. */

#ifndef FILES_H
#define FILES_H

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* The bytes in memory of exactly so many, so that one read beyond them is seen. */
static inline char *exactly(const char *text, size_t length) {
  char *copy = malloc(length > 0 ? length : 1);
  if (copy == NULL) exit(1);
  return memcpy(copy, text, length);
}

static inline char *joined(const char *head, const char *middle, const char *end) {
  const size_t length = strlen(head) + strlen(middle) + strlen(end) + 1;
  char *text = malloc(length);
  if (text == NULL) exit(1);
  snprintf(text, length, "%s%s%s", head, middle, end);
  return text;
}

static inline char *file_text(const char *folder, const char *name) {
  char path[1000];
  snprintf(path, sizeof path, "%s/%s", folder, name);
  FILE *file = fopen(path, "rb");
  if (file == NULL || fseek(file, 0, SEEK_END) != 0) exit(1);
  const long length = ftell(file);
  rewind(file);
  char *text = malloc((size_t)length + 1);
  if (text == NULL || fread(text, 1, (size_t)length, file) != (size_t)length) exit(1);
  text[length] = 0;
  fclose(file);
  return text;
}

#endif
