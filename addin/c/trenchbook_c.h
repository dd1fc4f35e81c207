/* The functions of the catalog for any language that can call C: Python, a macro, a program in an office of another
 * build. One library, no other file; nothing of C++ crosses, no exception comes out.
 *
 * One call takes the function's name and its arguments in three flat pieces: a letter for each value, the numbers one
 * after the other, the texts one after the other.
 *
 *     n   a number: the next one of `numbers`
 *     t   a text: the next one of `texts`, UTF-8, ended by a zero byte
 *     -   left out; an empty cell
 *     r   a range: its rows and columns are the next two of `numbers`, and its cells follow row by row as n, t or -;
 *         an empty text there is an empty cell
 *
 * A program in C, whole:
 *
 *     #include <stdio.h>
 *     #include "trenchbook_c.h"
 *
 *     int main(void) {
 *         static const char texts[] = "4 SDR35\0" "1%";
 *         trenchbook_answer answer;
 *         if (trenchbook_interface() != TRENCHBOOK_INTERFACE) return 2;
 *         if (trenchbook_call("PIPE.CAPACITY", "tt", 2, NULL, 0, texts, sizeof texts, &answer) == TRENCHBOOK_OK)
 *             printf("%.1f gpm\n", answer.number);
 *         else
 *             printf("%s\n", answer.sentence);
 *         trenchbook_free(&answer);
 *         return 0;
 *     }
 *
 * Every function may be called from several threads at once; an answer belongs to the thread that asked. Units, ranges,
 * defaults and sources of each function: docs/functions.md. */
#ifndef TRENCHBOOK_C_H
#define TRENCHBOOK_C_H

#include <stddef.h>
#include <stdint.h>

#if defined(_WIN32) && defined(TRENCHBOOK_C_BUILD)
#define TRENCHBOOK_API __declspec(dllexport)
#elif defined(_WIN32)
#define TRENCHBOOK_API __declspec(dllimport)
#else
#define TRENCHBOOK_API __attribute__((visibility("default")))
#endif

#ifdef __cplusplus
extern "C" {
#endif

/* Of this header. A library that says another number from trenchbook_interface() is not to be called further. */
#define TRENCHBOOK_INTERFACE 1

/* What a call comes to: the codes that a cell of Calc shows. */
enum {
    TRENCHBOOK_OK = 0,
    TRENCHBOOK_BAD_ARGUMENT = 502, /* not a value that the argument can have; outside validity; no solution */
    TRENCHBOOK_MALFORMED = 504,    /* letters, numbers and texts do not fit together: a fault of the caller */
    TRENCHBOOK_FAULT = 519,        /* a fault of ours, or no memory */
    TRENCHBOOK_NO_CONVERGENCE = 523, /* the method gave up */
    TRENCHBOOK_NO_FUNCTION = 525     /* no function has that name */
};

/* Written whole by trenchbook_call, whatever comes of it. What it points to lives until trenchbook_free. */
typedef struct trenchbook_answer {
    int32_t code;   /* TRENCHBOOK_OK or what was wrong */
    int32_t kind;   /* 'n' a number, 't' a text, 'N' a block of numbers, 'T' a block of texts, 0 an error */
    double number;  /* of kind n; in the unit of the call */
    size_t rows;    /* of a block; of text: 1 */
    size_t columns; /* the same; 0 rows are possible */
    /* Of kind N: row by row, rounded to twelve digits, so that they print alike everywhere. */
    const double* cells;
    /* Of kind N, a letter for each cell: n a number, - none, e an error: the cell is then a NaN whose low 32 bits are
     * the code, as Calc shows it. NULL where every cell is a number. */
    const char* letters;
    const char* texts;       /* of kinds t and T: row by row, UTF-8, each ended by a zero byte */
    size_t texts_size;       /* with the zero bytes */
    const char* sentence;    /* of an error, in English: the argument, its value, what is allowed */
    const char* sentence_es; /* the same in Spanish */
    void* held;              /* NULL where there is nothing to free, as with most numbers */
} trenchbook_answer;

/* TRENCHBOOK_INTERFACE as the library was built with it. */
TRENCHBOOK_API int32_t trenchbook_interface(void);
/* Of the engine: "0.1.0". */
TRENCHBOOK_API const char* trenchbook_version(void);
/* How many functions the catalog has. */
TRENCHBOOK_API size_t trenchbook_functions(void);
/* The program that calls, for TRENCHBOOK.SUPPORT: "LibreOffice 7.4.7.2; shell in Python 3.8.16". */
TRENCHBOOK_API void trenchbook_set_host(const char* name);

/* Calls a function by its name or its method's name ("PIPE.CAPACITY", "pipeCapacity", in any case). Arguments at the
 * end may be missing. `numbers` and `texts` may be NULL where they hold nothing; all of them must be used up.
 * Gives answer->code. */
TRENCHBOOK_API int32_t trenchbook_call(const char* function, const char* letters, size_t letter_count,
                                       const double* numbers, size_t number_count, const char* texts,
                                       size_t texts_size, trenchbook_answer* answer);

/* What a command of the menu does to a workbook, worked out as data (docs/menu.md tells the commands). The caller reads
 * the workbook, and carries out the steps in the answer: a text, in JSON. Values come as for trenchbook_call, in this
 * order; a WORKBOOK is many of them:
 *
 *     n   how many sheets, and for each
 *         t   its name
 *         n   1 where it is shown, 0 where it is hidden
 *         r   its cells from A1 to the last used one; an error as the text of its code, "Err:502"
 *         t   a letter a cell, row by row: 1 where it is a formula, 0 where it is typed
 *         t   a letter a column: 1 where it is hidden
 *         r   its print area: sheet, column, row, last column, last row; no row where it has none or several
 *         n   the row in which the lowest chart or picture ends, -1 without one
 *     r   defined names of cells: name, sheet, column, row, last column, last row in each row
 *     r   what commands keep with the workbook: name and text in each row
 *     r   where the cursor stands: sheet, column, row; no row where nobody knows
 *
 *     command            values                                                      fields of the answer
 *     nextMissing        WORKBOOK                                                    says, steps
 *     printRanges        WORKBOOK                                                    says, steps
 *     sheets             WORKBOOK, 1 for every sheet, else 0                         says, steps
 *     prices             WORKBOOK, the price book as WORKBOOK                        list, rows, asks, taken, left, steps
 *     option             WORKBOOK, the other as WORKBOOK, its file, a name or ""      steps
 *     optionNoted        WORKBOOK once more, the other's file                        list
 *     buy                WORKBOOK, the price book as WORKBOOK, most suppliers        list, rows, asks, taken, left, steps
 *     change             WORKBOOK, the changed as WORKBOOK, its file, a name or ""    what, steps
 *     changeNoted        WORKBOOK once more, what as answered                        list
 *     learn              WORKBOOK, the ledger as WORKBOOK                            list, steps
 *     close              the ledger as WORKBOOK, the job as WORKBOOK, a date          list, steps
 *     orderAsked         WORKBOOK                                                    stands, number, supplier, …
 *     order              WORKBOOK, number, supplier, issued, deliver, place, only,
 *                        replace                                                 steps
 *     orderIssued        WORKBOOK once more                                          list
 *     closeOutStands     WORKBOOK                                                    stands
 *     estimate           WORKBOOK, replace                                           steps
 *     estimateTaken      WORKBOOK once more                                          list
 *     actual             WORKBOOK                                                    list, rows, steps
 *     actualTaken        WORKBOOK once more, list and rows as answered               list
 *     shotColumns        WORKBOOK, csv, r of argument and column given               fields: argument, label, column
 *     shots              WORKBOOK, csv, r of argument and column, file's name        says, steps
 *     explainAsked       WORKBOOK, the cell's formula                                language, blocks
 *     explainQuestions   language, r of the place, formula, r of block and formula   formulas
 *     explain            language, WORKBOOK, place, formula, blocks, r of answers    list
 *     drawingFiles       WORKBOOK                                                    says, files: name, text of each
 *     valuesCopy         language, WORKBOOK                                          steps, for a copy
 *
 * Each step has a field "do": put (at, rows; null empties a cell), unprotect (sheet), clear (area: formulas go), note
 * (at, says), rows (pattern, before, count), print (area), select (at), show (sheet, visible), remember (name, text);
 * sheets/commands/steps.h says what they mean. A command that cannot be done is a TRENCHBOOK_BAD_ARGUMENT with its sentence. */
TRENCHBOOK_API int32_t trenchbook_command(const char* command, const char* letters, size_t letter_count,
                                          const double* numbers, size_t number_count, const char* texts,
                                          size_t texts_size, trenchbook_answer* answer);

/* Frees what an answer holds; nothing where it holds nothing. A second time does no harm. */
TRENCHBOOK_API void trenchbook_free(trenchbook_answer* answer);

#ifdef __cplusplus
}
#endif

#endif
