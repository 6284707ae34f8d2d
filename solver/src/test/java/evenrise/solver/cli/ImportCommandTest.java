package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.ProjectFile;
import evenrise.model.plan.Plan;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Planner;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

    /** What is imported can be planned at once, within every hard rule, though processing settles for two minutes. */
    @ParameterizedTest
    @CsvSource({
        "../datasets/juniper-hall/list.csv, 120, 60",
        "src/test/resources/intake/two-wire-400.csv, 230, 50",
        "src/test/resources/intake/two-wire-480.csv, 277, 60"
    })
    void makesProjectsThatCanBePlanned(String list, double volts, double hertz) throws IOException {
        Path map = Files.writeString(
                folder.resolve("map.yaml"),
                "format: evenrise-mapping/1\nline_to_neutral_v: " + volts + "\nfrequency_hz: " + hertz + "\n");
        Path project = folder.resolve("project.json");
        Shell.Result result = run("import", list, "--map", map.toString(), "-o", project.toString());
        assertThat(result.code()).isEqualTo(ExitCode.DONE);

        Project subject = ProjectFile.read(project).value().orElseThrow();
        Planner planner =
                new Planner(new PlanningRequest(subject, Optional.empty(), new Budget.Moves(2_000), 1, 1), any -> {});

        Plan plan = PlanFinisher.timed(subject, planner.plan().plan());
        assertThat(Referee.judge(subject, plan).violations()).isEmpty();
    }

    @Test
    void listsWhatOthersFeedWhatIsAskedAndWhatIsNotRead() throws IOException {
        Path list = Files.writeString(
                folder.resolve("list.csv"), "Name,Amps,Colour\nFire alarm panel,1,red\nUPS,2,\nDesk,1,\n");
        Path project = folder.resolve("project.json");

        Shell.Result result = run("import", list.toString(), "-o", project.toString());

        assertThat(result.out())
                .contains("Outside this project: life safety", "'Fire alarm panel'")
                .contains("Questions that somebody has to answer", "'UPS'")
                .contains("figures of 2 loads, each named in its load's 'guessed'")
                .contains("Columns that were not read", "'Colour'");
        assertThat(ProjectFile.read(project).value().orElseThrow().loads()).hasSize(2);
    }

    @Test
    void placesLifeSafetyWhereSomebodyAsks() throws IOException {
        Path list = Files.writeString(folder.resolve("list.csv"), "Name,Amps\nFire alarm panel,1\nDesk,1\n");
        Path project = folder.resolve("project.json");

        run("import", list.toString(), "-o", project.toString(), "--place-life-safety");

        assertThat(ProjectFile.read(project).value().orElseThrow().loads())
                .filteredOn(load -> !load.switched())
                .singleElement()
                .satisfies(load -> assertThat(load.name()).contains("Fire alarm panel", "760.41"));
    }

    @Test
    void endsWithACodeOfItsOwnWhereAMappingNamesAColumnInVain() throws IOException {
        Path list = Files.writeString(folder.resolve("list.csv"), "Name,Amps\nDesk,1\n");
        Path map = Files.writeString(
                folder.resolve("map.yaml"), "format: evenrise-mapping/1\ncolumns: {watts: Leistung}\n");

        Shell.Result result =
                run("import", list.toString(), "--map", map.toString(), "-o", "unused.json", "--without-bad-rows");

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.out()).contains("'Leistung'", "'Name', 'Amps'");
    }

    @Test
    void keepsRemarksAsNotesOfTheLoads() throws IOException {
        Path list = Files.writeString(
                folder.resolve("list.csv"), "Tag,Name,Room,Amps,Remarks\nD-1,Desk,A,1,above the door\nD-2,Desk,B,1,\n");
        Path project = folder.resolve("project.json");

        run("import", list.toString(), "-o", project.toString());

        assertThat(project).content().containsOnlyOnce("\"notes\"").contains("\"notes\": \"above the door\"");
        assertThat(ProjectFile.read(project).value().orElseThrow().loads())
                .extracting(Load::id)
                .containsExactly("D-1", "D-2");
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

    /** What was read, corrected in the mapping that is written, read again: no list is touched. */
    @Test
    void explainsHowItReadsAndTakesCorrectionsInAMapping() throws IOException {
        Path list = Files.writeString(
                folder.resolve("list.csv"), "Name,Supply,Amps,Colour\nDesk,120V,1,red\nLamp,120V,many,red\n");
        Path map = folder.resolve("map.yaml");
        Path project = folder.resolve("project.json");

        Shell.Result read = run("import", list.toString(), "--explain", "--write-mapping", map.toString());

        assertThat(read.code()).isEqualTo(ExitCode.DONE);
        assertThat(read.out())
                .containsPattern("B +Supply +volts +its values")
                .containsPattern("D +Colour +not read")
                .containsPattern("amps +many +a problem, told there +problem +1")
                .containsPattern("role +\\(empty\\) +Lamp +auxiliary +guessed +1")
                .contains("Written: " + map);
        String corrected = Files.readString(map).replace("reads: many", "reads: \"2 A\"");
        assertThat(corrected).contains("2 A");
        Files.writeString(map, corrected);
        assertThat(run("import", list.toString(), "--map", map.toString(), "-o", project.toString())
                        .code())
                .isEqualTo(ExitCode.DONE);
        assertThat(ProjectFile.read(project).value().orElseThrow().loads())
                .extracting(Load::runningAmps)
                .containsExactly(1.0 + 2.0);
    }

    @Test
    void leavesAColumnAloneThatIsToBeIgnored() throws IOException {
        Path list = Files.writeString(folder.resolve("list.csv"), "Name,Amps,Voltage\nDesk,1,see plan\n");
        Path project = folder.resolve("project.json");

        assertThat(run("import", list.toString(), "-o", project.toString(), "--ignore", "Voltage")
                        .code())
                .isEqualTo(ExitCode.DONE);
    }

    @Test
    void doesNotWriteProjectAndMappingIntoOneFile() throws IOException {
        Path list = Files.writeString(folder.resolve("list.csv"), "Name,Amps\nDesk,1\n");
        String file = folder.resolve("p.json").toString();

        assertThat(run("import", list.toString(), "-o", file, "--write-mapping", file)
                        .code())
                .isEqualTo(ExitCode.USAGE);
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

    private Path options(String... sheets) throws IOException {
        Path list = folder.resolve("options.xlsx");
        try (OutputStream out = Files.newOutputStream(list);
                Workbook workbook = new Workbook(out, "test", null)) {
            for (String name : sheets) {
                Worksheet sheet = workbook.newWorksheet(name);
                sheet.value(0, 0, "Qty");
                sheet.value(0, 1, "Name");
                sheet.value(0, 2, "Amps");
                sheet.value(1, 0, sheets[0].equals(name) ? 2 : 3);
                sheet.value(1, 1, "Amplifier");
                sheet.value(1, 2, 12);
            }
        }
        return list;
    }

    @Test
    void sheetsThatAreAlternatesAreProjectsOfTheirOwn() throws IOException {
        Path list = options("Base bid", "Option B");

        Shell.Result result = run(
                "import",
                list.toString(),
                "--alternates",
                "--name",
                "Hall",
                "-o",
                folder.resolve("alts").toString());

        assertThat(result.code()).isEqualTo(ExitCode.DONE);
        assertThat(result.out())
                .contains("Alternate: Base bid", "Written: base-bid.project.json, option-b.project.json");
        Project base = ProjectFile.read(folder.resolve("alts/base-bid.project.json"))
                .value()
                .orElseThrow();
        Project option = ProjectFile.read(folder.resolve("alts/option-b.project.json"))
                .value()
                .orElseThrow();
        assertThat(base.name()).isEqualTo("Hall, Base bid");
        assertThat(base.loads()).hasSize(2);
        assertThat(option.loads()).hasSize(3);
    }

    @Test
    void sheetsThatSoundLikeAlternatesAreAskedAboutBeforeTheyAreAddedUp() throws IOException {
        String project = folder.resolve("project.json").toString();

        assertThat(run("import", options("Kit", "Option B").toString(), "-o", project)
                        .out())
                .containsPattern("Questions[^#]*'Kit', 'Option\\s+B'\\s+are\\s+added\\s+up:");
        assertThat(run("import", options("Hall", "Stage").toString(), "-o", project)
                        .out())
                .containsPattern("Guessed[^#]*'Hall',\\s+'Stage'\\s+are\\s+added\\s+up;");
    }

    @Test
    void oneSheetIsNoAlternate() throws IOException {
        Shell.Result result = run(
                "import",
                options("Kit").toString(),
                "--alternates",
                "-o",
                folder.resolve("alts").toString());

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains("two or more sheets");
    }

    @Test
    void quantitiesThatAreOpenAreListed() throws IOException {
        Path list = Files.writeString(
                folder.resolve("list.csv"), "Qty,Name,Amps,Role\nabout 10,Rack,12,amplifier\nTBC,Lamp,12,auxiliary\n");

        assertThat(run("import", list.toString(), "-o", folder.resolve("p.json").toString())
                        .out())
                .contains(
                        "Quantities that are open",
                        "- Rack: 8 to 12, likely 10, 10 in the project",
                        "- Lamp: nobody has said how many, 1 in the project");
    }

    @Test
    void saysThatAListIsMissing() {
        assertThat(run("import", folder.resolve("none.csv").toString(), "-o", "unused.json")
                        .err())
                .contains("none.csv", "does not exist");
        assertThat(run("import").code()).isEqualTo(ExitCode.USAGE);
    }

    /** What somebody noted in the project stays when the list is imported again; what has no place any more is said. */
    @Test
    void keepsTheNotesOfTheProjectThatItReplaces() throws IOException {
        Path list = Files.writeString(folder.resolve("list.csv"), "Name,Amps\nDesk,14\nRack,13\n");
        Path project = folder.resolve("project.json");
        run("import", list.toString(), "-o", project.toString());
        List<Load> loads = ProjectFile.read(project).value().orElseThrow().loads();
        String text = Files.readString(project);
        for (Load load : loads) {
            String id = "{\"id\": \"" + load.id() + "\"";
            assertThat(text).contains(id);
            text = text.replace(id, id + ", \"notes\": \"seen " + load.name() + "\"");
        }
        Files.writeString(project, text);
        Files.writeString(list, "Name,Amps\nDesk,12\n");

        Shell.Result result = run("import", list.toString(), "-o", project.toString());

        assertThat(Files.readString(project))
                .contains("\"notes\": \"seen Desk\"")
                .doesNotContain("seen Rack");
        assertThat(result.err()).contains("notes and fields of your own are not kept at loads '");
    }

    @Test
    void refusesAMappingOfAnotherVersion() throws IOException {
        Path list = Files.writeString(folder.resolve("list.csv"), "Name,Amps\nDesk,1\n");
        Path map = Files.writeString(folder.resolve("map.json"), "{\"format\": \"evenrise-mapping/2\"}");

        Shell.Result result = run(
                "import",
                list.toString(),
                "--map",
                map.toString(),
                "-o",
                folder.resolve("p.json").toString());

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains("'evenrise-mapping/2'", "'evenrise-mapping/1'");
    }
}
