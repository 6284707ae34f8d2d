package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tables of the small hall, exported, edited by hand and taken in: a processor in row 3, an amplifier in row 4. */
class TakeInTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    private Path folder;

    private Path project;
    private Path tables;
    private Path loads;

    @BeforeEach
    void export() throws IOException {
        project = Files.writeString(
                folder.resolve("hall.json"),
                SmallHall.PROJECT.replace(
                        "\"name\": \"Sub left\"", "\"name\": \"Sub left\", \"x-door\": {\"key\": \"blue\"}"));
        tables = folder.resolve("tables");
        loads = tables.resolve("loads.csv");
        assertThat(run("export", project.toString(), "-o", tables.toString()).code())
                .isEqualTo(ExitCode.DONE);
    }

    private Shell.Result run(String... arguments) {
        return new Shell(SmallHall.sound()).run(arguments);
    }

    private Shell.Result takeIn() {
        return run("import", "--into", project.toString(), tables.toString());
    }

    private void edit(String piece, String other) throws IOException {
        String text = Files.readString(loads);
        assertThat(text).contains(piece);
        Files.writeString(loads, text.replace(piece, other));
    }

    private JsonNode written() throws IOException {
        return JSON.readTree(project.toFile());
    }

    @Nested
    class Taken {
        @Test
        void isTheCellThatIsAnotherWithItsOldValue() throws IOException {
            edit("amplifier,,32,", "amplifier,,40,");

            Shell.Result result = takeIn();

            assertThat(result.code()).as(result.err()).isEqualTo(ExitCode.DONE);
            assertThat(result.out())
                    .contains("1 row is another:", "loads, row 4: 'amp': breaker_a 32 → 40", "Written:");
            assertThat(written().at("/loads/1/breaker_a").asDouble()).isEqualTo(40);
        }

        @Test
        void leavesWhatNoSheetShows() throws IOException {
            edit("amplifier,,32,", "amplifier,,40,");

            takeIn();

            assertThat(written().at("/loads/1/x-door/key").asText()).isEqualTo("blue");
            assertThat(written().at("/loads/1").has("poles")).isFalse();
            assertThat(written().at("/loads/0/id").asText()).isEqualTo("dsp");
        }

        @Test
        void isNoByteOnATrial() throws IOException {
            byte[] before = Files.readAllBytes(project);
            edit("amplifier,,32,", "amplifier,,40,");

            Shell.Result result = run("import", "--into", project.toString(), tables.toString(), "--dry-run");

            assertThat(result.out()).contains("32 → 40", "Nothing is written.");
            assertThat(Files.readAllBytes(project)).isEqualTo(before);
        }

        @Test
        void goesElsewhereWhereThatIsSaid() throws IOException {
            byte[] before = Files.readAllBytes(project);
            edit("amplifier,,32,", "amplifier,,40,");

            run(
                    "import",
                    "--into",
                    project.toString(),
                    tables.toString(),
                    "-o",
                    folder.resolve("next.json").toString());

            assertThat(Files.readAllBytes(project)).isEqualTo(before);
            assertThat(JSON.readTree(folder.resolve("next.json").toFile())
                            .at("/loads/1/breaker_a")
                            .asDouble())
                    .isEqualTo(40);
        }

        @Test
        void isARowThatIsNewAndOneThatIsGone() throws IOException {
            edit("\r\namp,", "\r\nsub,");

            Shell.Result result = takeIn();

            assertThat(result.out())
                    .contains(
                            "loads, row 4: 'sub' is new: name Sub left",
                            "loads: 'amp' is taken out, and with it x-door");
            assertThat(written().path("loads")).hasSize(2);
        }

        @Test
        void isACellThatSaysNothingAnyMore() throws IOException {
            edit(",20,10,,,100,", ",20,,,,100,");

            assertThat(takeIn().out()).contains("idle_a 10 → nothing");
            assertThat(written().at("/loads/1").has("idle_a")).isFalse();
        }

        @Test
        void isAColumnOfMyOwnAndAnyOtherField() throws IOException {
            String text = Files.readString(loads)
                    .replaceFirst("\r\n", ",x-shelf,circuit.devices\r\n")
                    .replaceFirst("\r\n\\(unit\\)(.*)", "\r\n(unit)$1,,")
                    .replaceFirst("\r\namp(.*)", "\r\namp$1,upper,4");
            Files.writeString(loads, text);

            assertThat(takeIn().out()).contains("x-shelf nothing → upper", "circuit.devices nothing → 4");
            assertThat(written().at("/loads/1/x-shelf").asText()).isEqualTo("upper");
            assertThat(written().at("/loads/1/circuit/devices").asInt()).isEqualTo(4);
        }

        @Test
        void isReadWithADecimalCommaWhereASpreadsheetWritesOne() throws IOException {
            Files.writeString(tables.resolve("loads.csv"), "id;running_a;idle_a\r\namp;20,5;10\r\ndsp;10;\r\n");

            assertThat(takeIn().out()).contains("running_a 20 → 20.5").doesNotContain("'dsp'");
        }

        @Test
        void saysWhereItChangesBackWhatTheProjectHasChanged() throws IOException {
            Path workbook = folder.resolve("hall.xlsx");
            run("export", project.toString(), "-o", workbook.toString());
            Files.writeString(project, Files.readString(project).replace("\"running_a\": 20", "\"running_a\": 21"));

            Shell.Result result = run("import", "--into", project.toString(), workbook.toString(), "--dry-run");

            assertThat(result.err()).contains("the project has changed since these tables were written");
            assertThat(result.out()).contains("running_a 21 → 20");
        }
    }

    @Nested
    class Refused {
        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                value = {
                    "amplifier,,32, | amplifier,,-1, | loads, row 4, column E: breaker_a of load 'amp' is -1, expected more than 0",
                    "amplifier,,32, | amplifier,,many, | loads, row 4, column E: breaker_a of 'amp' is 'many', expected a number",
                    "amplifier,,32, | amplifer,,32, | loads, row 4, column C: role of load 'amp' is 'amplifer', expected one of:",
                    "id,name,role | id,nmae,role | loads, row 1, column B: 'nmae' is no field of these. Maybe 'name'.",
                    "id,name,role | id,role,role | loads, row 1, column C: 'role' stands twice",
                    "id,name,role | tag,name,role | loads, row 1, column A: 'tag' is no field of these.",
                    "amp,Sub left | dsp,Sub left | loads, row 4: 'dsp' stands in row 3, too.",
                    "amp,Sub left | ,Sub left | loads, row 4: it has no id."
                })
        void isWhatMakesNoSenseWithItsCell(String piece, String other, String message) throws IOException {
            byte[] before = Files.readAllBytes(project);
            edit(piece, other);

            Shell.Result result = takeIn();

            assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
            assertThat(result.err()).contains(message);
            assertThat(Files.readAllBytes(project)).isEqualTo(before);
        }

        @Test
        void isWhatContradictsWithTheCell() throws IOException {
            Files.writeString(loads, "id,panels\r\namp,P9\r\ndsp,\r\n");

            assertThat(takeIn().err())
                    .contains(
                            "loads, row 2, column B: panels[0] of load 'amp' is 'P9', expected the id of one of the panels."
                                    + " Maybe 'P1'.");
        }

        @Test
        void isWhatIsMissingInANewRow() throws IOException {
            Files.writeString(loads, Files.readString(loads).replaceFirst("\r\namp,", "\r\nfan,fan\r\namp,"));

            assertThat(takeIn().err()).contains("loads, row 4, column C: role of load 'fan' is missing");
        }

        @Test
        void isAFileThatIsNoTableOfOurs() throws IOException {
            Path list = Files.writeString(folder.resolve("list.csv"), "Name,Watts\r\nAmp,500\r\n");

            Shell.Result result = run("import", "--into", project.toString(), list.toString());

            assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
            assertThat(result.err())
                    .contains("no table in it is called one of loads, panels", "evenrise export PROJECT");
        }

        @Test
        void isAFolderThatSomebodyHasEditedWhenItIsExportedAgain() throws IOException {
            edit("amplifier,,32,", "amplifier,,40,");

            Shell.Result result = run("export", project.toString(), "-o", tables.toString());

            assertThat(result.code()).isEqualTo(ExitCode.NOT_WRITTEN);
            assertThat(result.err()).contains("loads.csv", "Take in what is changed there first");
        }
    }
}
