package evenrise.model.file;

import static evenrise.model.file.Samples.PROJECT;
import static evenrise.model.file.Samples.onlyProblem;
import static evenrise.model.file.Samples.read;
import static evenrise.model.file.Samples.readYaml;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever the file is, reading gives one clear problem and throws nothing. */
class BadDaysTest {
    @TempDir
    private Path folder;

    @Test
    void refusesAMissingFile() {
        Problem problem = onlyProblem(ProjectFile.read(folder.resolve("none.json")));

        assertThat(problem.message()).contains("none.json").contains("missing");
    }

    @Test
    void refusesADirectory() {
        assertThat(onlyProblem(ProjectFile.read(folder)).message()).contains("a directory");
    }

    @Test
    void refusesAFileOverTheLimitBeforeParsingIt() throws IOException {
        Path large = folder.resolve("large.json");
        try (RandomAccessFile file = new RandomAccessFile(large.toFile(), "rw")) {
            file.setLength(Input.MOST_BYTES + 1L);
        }

        assertThat(onlyProblem(ProjectFile.read(large)).message()).contains("64 MiB");
    }

    @Test
    void refusesAStreamOverTheLimit() {
        InputStream endless = new InputStream() {
            @Override
            public int read() {
                return ' ';
            }

            @Override
            public int read(byte[] into, int from, int length) {
                java.util.Arrays.fill(into, from, from + length, (byte) ' ');
                return length;
            }
        };

        assertThat(onlyProblem(ProjectFile.read(endless, "-")).message()).startsWith("standard input is over 67108864");
    }

    @Test
    void refusesAStreamThatFails() {
        InputStream broken = new InputStream() {
            @Override
            public int read() throws IOException {
                throw new IOException("cable pulled");
            }
        };

        assertThat(onlyProblem(ProjectFile.read(broken, "-")).message()).contains("cable pulled");
    }

    @Test
    void refusesWhatHoldsNothing() {
        assertThat(onlyProblem(read("")).message()).contains("is empty");
        assertThat(onlyProblem(read(" \n ")).message()).contains("is empty");
        assertThat(onlyProblem(readYaml("# only a comment\n")).message()).contains("empty but for comments");
    }

    @Test
    void refusesBinary() {
        Problem nul = onlyProblem(read("{\n \"a\0"));
        Problem notUtf8 = onlyProblem(ProjectFile.read(new byte[] {'{', '\n', (byte) 0xFF, (byte) 0xFE}, "x.json"));

        assertThat(nul.message()).contains("binary");
        assertThat(nul.line()).isEqualTo(2);
        assertThat(nul.column()).isEqualTo(4);
        assertThat(notUtf8.message()).contains("not UTF-8: byte 0xFF at offset 2");
        assertThat(notUtf8.line()).isEqualTo(2);
        assertThat(notUtf8.column()).isEqualTo(1);
    }

    @Test
    void refusesWhatIsCutShortAtAnyCharacter() {
        String whole = PROJECT.strip();
        for (int length = 1; length < whole.length(); length++) {
            Problem problem = onlyProblem(read(whole.substring(0, length)));

            assertThat(problem.line()).as("cut after %d", length).isPositive();
            assertThat(problem.message()).containsAnyOf("cut short", "broken JSON");
        }
    }

    @Test
    void refusesWhatFollowsTheObject() {
        assertThat(onlyProblem(read(PROJECT + "{}")).message()).contains("two documents");
        assertThat(onlyProblem(readYaml(PROJECT + "---\na: 1\n")).message()).contains("two documents");
        assertThat(onlyProblem(read(PROJECT + "}")).message()).contains("broken JSON");
    }

    @Test
    void refusesDeepNesting() {
        String deep = "[".repeat(100_000);

        assertThat(onlyProblem(read("{\"a\":" + deep)).message()).containsIgnoringCase("nest");
        assertThat(onlyProblem(readYaml("a: " + deep.replace("[", "[\n"))).message())
                .containsIgnoringCase("nest");
    }

    @Test
    void refusesYamlAliasesRatherThanExpandingThem() {
        StringBuilder laughs = new StringBuilder("a0: &a0 [lol, lol]\n");
        for (int i = 1; i < 40; i++) {
            laughs.append("a%d: &a%d [*a%d, *a%d]\n".formatted(i, i, i - 1, i - 1));
        }

        Problem problem = onlyProblem(readYaml(laughs.toString()));

        assertThat(problem.message()).contains("YAML alias");
        assertThat(problem.line()).isEqualTo(2);
    }

    @Test
    void saysWhereYamlIsBrokenAndWhy() {
        Problem problem = onlyProblem(readYaml("format: x\n\tname: y\n"));

        assertThat(problem.line()).isEqualTo(2);
        assertThat(problem.column()).isEqualTo(1);
        assertThat(problem.message()).contains("TAB");
    }

    @Test
    void refusesYamlLinesThatWouldTakeForEver() {
        Problem problem = onlyProblem(readYaml("a: b\nb: " + "x".repeat(5_000_000)));

        assertThat(problem.message()).contains("longer line");
        assertThat(problem.line()).isEqualTo(2);
    }

    @Test
    void refusesMoreValuesThanAPlantCanHave() {
        String many = "{\"a\": [" + "0,".repeat(TreeReader.MOST_VALUES) + "0]}";

        assertThat(onlyProblem(read(many)).message()).contains("over 2000000 values");
    }

    @Test
    void refusesANumberOfThousandsOfDigits() {
        String number = "9".repeat(5000);

        assertThat(onlyProblem(read("{\"a\": " + number + "}")).message()).contains("hall.json");
    }

    @Test
    void refusesAnotherTopLevel() {
        assertThat(onlyProblem(read("[1, 2]")).message()).contains("the project is a list, expected an object");
        assertThat(onlyProblem(read("42")).message()).contains("the project is 42");
        assertThat(onlyProblem(read("null")).message()).contains("the project is null");
        assertThat(onlyProblem(readYaml("just words")).message()).contains("the project is 'just words'");
    }

    @Test
    void namesAKeyGivenTwice() {
        Problem problem = onlyProblem(read(PROJECT.replace("\"slots\": 12,", "\"slots\": 12,\n\"slots\": 24,")
                .replaceFirst("(?s)\"slots\": 24,(.*)\"slots\": 24,", "\"slots\": 24,$1")));

        assertThat(problem.pointer()).isEqualTo("/panels/0/slots");
        assertThat(problem.line()).isEqualTo(7);
        assertThat(problem.message()).contains("given twice").contains("first in line 6");
    }

    @Test
    void readsAFileWhoseNameHasSpacesAndUmlauts() throws IOException {
        Path file = folder.resolve("Bühne 1.json");
        Files.writeString(file, PROJECT, StandardCharsets.UTF_8);

        assertThat(ProjectFile.read(file).problems()).isEmpty();
    }
}
