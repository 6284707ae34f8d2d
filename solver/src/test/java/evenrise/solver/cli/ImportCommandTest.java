package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.ProjectFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ImportCommandTest {
    @TempDir
    private Path folder;

    private Shell.Result run(String... arguments) {
        return new Shell(SmallHall.sound()).run(arguments);
    }

    @Test
    void makesTheProjectOfTheDataset() {
        Path dataset = Path.of("..", "datasets", "juniper-hall");
        Path project = folder.resolve("project.json");

        Shell.Result result = run(
                "import", dataset.resolve("list.csv").toString(), "-o", project.toString(), "--name", "Juniper Hall");

        assertThat(result.code()).isEqualTo(ExitCode.DONE);
        assertThat(ProjectFile.read(project).value())
                .isEqualTo(ProjectFile.read(dataset.resolve("project.json")).value())
                .isPresent();
    }

    @Test
    void endsWithTheCautions() throws IOException {
        Path list = Files.writeString(folder.resolve("list.csv"), "Name,Amps\nDesk,1\n");

        Shell.Result result =
                run("import", list.toString(), "-o", folder.resolve("p.json").toString());

        assertThat(result.out()).contains("licensed professional", "lock out");
    }

    @Test
    void doesNotWriteOverItsList() throws IOException {
        Path list = Files.writeString(folder.resolve("list.csv"), "Name,Amps\nDesk,1\n");

        Shell.Result result = run("import", list.toString(), "-o", list.toString());

        assertThat(result.code()).isEqualTo(ExitCode.USAGE);
        assertThat(result.err()).contains("would overwrite");
        assertThat(list).hasContent("Name,Amps\nDesk,1\n");
    }

    @Test
    void writesNothingWhereARowIsBad() throws IOException {
        Path list = Files.writeString(folder.resolve("list.csv"), "Name,Amps\nDesk,1\nLamp,many\n");
        Path project = folder.resolve("project.json");

        Shell.Result result = run("import", list.toString(), "-o", project.toString());

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.out()).contains("row 3, column B", "'many'");
        assertThat(result.err()).contains("--without-bad-rows");
        assertThat(project).doesNotExist();
    }

    @Test
    void goesOnWithoutBadRowsWhereItIsTold() throws IOException {
        Path list = Files.writeString(folder.resolve("list.csv"), "Name,Amps\nDesk,1\nLamp,many\n");
        Path project = folder.resolve("project.json");

        Shell.Result result = run("import", list.toString(), "-o", project.toString(), "--without-bad-rows");

        assertThat(result.code()).isEqualTo(ExitCode.DONE);
        assertThat(ProjectFile.read(project).value().orElseThrow().loads()).hasSize(1);
    }

    @Test
    void readsColumnsByAMapping() throws IOException {
        Path list = Files.writeString(folder.resolve("list.csv"), "Was,Anschluss\nPult,460\n");
        Path map = Files.writeString(
                folder.resolve("map.yaml"),
                "format: evenrise-mapping/1\ncolumns: {name: Was, watts: Anschluss}\nline_to_neutral_v: 230\n");
        Path project = folder.resolve("project.json");

        Shell.Result result = run("import", list.toString(), "--map", map.toString(), "-o", project.toString());

        assertThat(result.code()).isEqualTo(ExitCode.DONE);
        // 460 W / (230 V · 0.95)
        assertThat(ProjectFile.read(project)
                        .value()
                        .orElseThrow()
                        .loads()
                        .get(0)
                        .runningAmps())
                .isEqualTo(2.105);
    }

    @Test
    void saysWhatIsWrongWithAMapping() throws IOException {
        Path list = Files.writeString(folder.resolve("list.csv"), "Name,Amps\nDesk,1\n");
        Path map = Files.writeString(folder.resolve("map.yaml"), "format: evenrise-mapping/1\nvoltage: 230\n");

        Shell.Result result = run("import", list.toString(), "--map", map.toString(), "-o", "unused.json");

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains("voltage", "unknown field");
    }

    @Test
    void writesATemplateThatIsNoProject() {
        Path template = folder.resolve("list.xlsx");

        assertThat(run("import", "--template", template.toString()).code()).isEqualTo(ExitCode.DONE);
        assertThat(template).isNotEmptyFile();
    }

    @Test
    void saysThatAListIsMissing() {
        assertThat(run("import", folder.resolve("none.csv").toString(), "-o", "unused.json")
                        .err())
                .contains("none.csv", "does not exist");
        assertThat(run("import").code()).isEqualTo(ExitCode.USAGE);
    }
}
