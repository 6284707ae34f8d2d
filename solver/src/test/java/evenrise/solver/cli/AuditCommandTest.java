package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.browser.DrawnPages;
import evenrise.solver.document.Plants;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AuditCommandTest {
    @TempDir
    private Path folder;

    private Path project;
    private Path plan;

    @BeforeEach
    void planTheProject() throws IOException {
        project = Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT);
        plan = folder.resolve("hall.plan.json");
        new Shell(SmallHall.sound()).run("plan", project.toString());
    }

    @Test
    void endsWithZeroWhenNoRuleIsBroken() {
        Shell.Result result = audit();

        assertThat(result.code()).isEqualTo(ExitCode.DONE);
        assertThat(result.out())
                .contains("The project file is the one the plan was made from.", "What makes the peak of 100.0 A")
                .doesNotContain("Recomputed");
        assertThat(result.err()).isEmpty();
    }

    @Test
    void provesWhatIsAskedAndEndsWhenNothingIsLeftToProve() {
        Shell.Result result =
                new Shell(SmallHall.sound()).run("audit", project.toString(), plan.toString(), "--prove", "10m");

        assertThat(result.code()).isEqualTo(ExitCode.DONE);
        assertThat(result.out()).containsPattern("Proven lower bound of the objective +120\\.00 ");
        assertThat(result.err()).contains("a plan of 120.00 A equiv. turned up, better than this one of 120.08.");
    }

    private Shell.Result proof(Path kept) {
        return new Shell(SmallHall.sound())
                .run("audit", project.toString(), plan.toString(), "--prove", "10m", "--proof", kept.toString());
    }

    @Test
    void goesOnFromWhatAnEarlierProofHasKept() throws IOException {
        Path kept = folder.resolve("hall.proof.json");
        assertThat(proof(kept).code()).isEqualTo(ExitCode.DONE);
        assertThat(Files.readString(kept)).contains("\"proven_objective\": 119.99", "\"proofs\": 1");

        Shell.Result next = proof(kept);

        assertThat(next.out()).containsPattern("Proven lower bound of the objective +120\\.00 ");
        assertThat(next.err())
                .contains("which says that 1 proof before this one came to 120.00 A equiv.; that is taken as said,"
                        + " not proven anew.");
        assertThat(Files.readString(kept))
                .as("it gained nothing, and is counted: the next one goes another way")
                .contains("\"proven_objective\": 119.99", "\"proofs\": 2");
    }

    /** A bound holds of one project alone. */
    @Test
    void takesNoProofOfAnotherStateOfTheProject() throws IOException {
        Path kept = folder.resolve("hall.proof.json");
        proof(kept);
        byte[] before = Files.readAllBytes(kept);
        Files.writeString(project, SmallHall.PROJECT.replace("Small hall", "Large hall"));

        Shell.Result result = proof(kept);

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains("is of another project, or of an earlier state of this one.");
        assertThat(Files.readAllBytes(kept)).isEqualTo(before);
    }

    @Test
    void takesNoProofOfAnotherVersionAndNoFileThatIsNone() throws IOException {
        Path kept = folder.resolve("hall.proof.json");
        proof(kept);
        Files.writeString(
                kept,
                Files.readString(kept).replaceFirst("\"software_version\": \"[^\"]*\"", "\"software_version\": \"0\""));
        assertThat(proof(kept).err()).contains("was written by version 0.");

        Files.writeString(kept, "no proof");
        Shell.Result result = proof(kept);

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains("cannot be gone on from: ", "Name another file");
        assertThat(Files.readString(kept)).isEqualTo("no proof");
    }

    @Test
    void overwritesNoInputWithAProof() throws IOException {
        byte[] before = Files.readAllBytes(plan);

        assertThat(proof(plan).err()).contains("would overwrite what it is made from");
        assertThat(Files.readAllBytes(plan)).isEqualTo(before);
    }

    @Test
    void asksForTheTimeOfAProofWithItsFile() {
        Shell.Result result =
                new Shell(SmallHall.sound()).run("audit", project.toString(), plan.toString(), "--proof", "proof.json");

        assertThat(result.code()).isEqualTo(ExitCode.USAGE);
        assertThat(result.err()).contains("--proof is for a proof. Say --prove TIME as well.");
    }

    @Test
    void asksForTheTimeOfAProofWithThreads() {
        Shell.Result result =
                new Shell(SmallHall.sound()).run("audit", project.toString(), plan.toString(), "--threads", "2");

        assertThat(result.code()).isEqualTo(ExitCode.USAGE);
        assertThat(result.err()).contains("Say --prove TIME as well.");
    }

    /**
     * Running 10, 20 and 0 A deviate by 10 A at supply and panel; the peak is 100 A; the last switch-on comes 0.75 s after
     * the command, a tenth each: 120.075. Moved: the amplifier's breaker and lead, and the board's start delay, 5 each.
     */
    @Test
    void countsWhatHasMovedSinceAnEarlierPlan() throws IOException {
        Files.writeString(
                project,
                SmallHall.PROJECT.replace(
                        "\"name\": \"Small hall\",",
                        "\"name\": \"Small hall\", \"objective\": {\"peak_inrush\": 1, \"supply_imbalance\": 1,"
                                + " \"panel_imbalance\": 1, \"duration\": 0.1, \"boards\": 0, \"move\": 5},"));
        Path earlier = folder.resolve("earlier.plan.json");
        new Shell(SmallHall.moved()).run("plan", project.toString(), "-o", earlier.toString());
        new Shell(SmallHall.sound()).run("plan", project.toString(), "--from", earlier.toString());

        Shell.Result against = new Shell(SmallHall.sound())
                .run("audit", project.toString(), plan.toString(), "--from", earlier.toString());

        assertThat(Files.readString(plan)).contains("\"moved_breakers\": 1").contains("\"moved_settings\": 1");
        assertThat(against.out())
                .containsPattern("Breakers moved +1 ")
                .containsPattern("Leads moved +1 ")
                .containsPattern("Settings changed +1 ")
                .containsPattern("Objective +135\\.0[78] ")
                .doesNotContain("Recomputed");
        assertThat(audit().out())
                .containsPattern("Objective +120\\.0[78] ")
                .contains("3 moves against an earlier plan, 15.00")
                .doesNotContain("Recomputed", "Breakers moved");
    }

    @Test
    void showsWhereOneMoreLoadCouldGo() {
        Shell.Result result =
                new Shell(SmallHall.sound()).run("audit", project.toString(), plan.toString(), "--next-load", "5:2");

        assertThat(result.code()).isEqualTo(ExitCode.DONE);
        assertThat(result.out())
                .contains("5.00 A on 2 poles", "Up to A", "Voltage drop, inrush,", "the panel's rating  unknown");
    }

    /** Slots 1 and 3 are taken; 5 and 6 lie on C, 11 and 12 too: four places that differ in their slots alone. */
    @Test
    void tellsPlacesThatDifferInTheirSlotsAloneInOneRow() {
        Shell shell = new Shell(SmallHall.sound());

        String folded = shell.run("audit", project.toString(), plan.toString(), "--next-load", "5:1")
                .out();
        String each = shell.run("audit", project.toString(), plan.toString(), "--next-load", "5:1", "--all")
                .out();

        assertThat(folded).containsPattern("P1 +4: 5, 6, \\.\\.\\. +C ").contains("--all shows all 10 places");
        assertThat(each).containsPattern("P1 +5 +C ").containsPattern("P1 +12 +C ");
    }

    /**
     * P3, fed by a source of its own, allows 100·0.8 A: 80 on its two free phases, and 77 beside the fans' 3 A. P2 is behind
     * a single transformer of 15 kVA, 62.5 A at 240 V: 62.5 less 8 or 9 A of the leg.
     */
    @Test
    void showsWhereOneMoreLoadCouldGoInAPlant() {
        Path plant = Plants.twoHalls();
        Path planned = folder.resolve("halls.plan.json");
        Shell shell = new Shell(DrawnPages.of(Plants.read(plant), 1000).layout().plan());
        shell.run("plan", plant.toString(), "-o", planned.toString());

        Shell.Result result = shell.run("audit", plant.toString(), planned.toString(), "--next-load", "5:1", "--all");

        assertThat(result.code()).isEqualTo(ExitCode.DONE);
        assertThat(result.out())
                .containsPattern("P3 .* 80\\.00 +the panel's rating")
                .containsPattern("P3 .* 77\\.00 +the panel's rating")
                .containsPattern("P2 .* 5[34]\\.50 +the rating of it.* 120")
                .contains("room that is to be left");
    }

    @Test
    void saysWhatOfANewerProjectIsLeftOutOfAccount() throws IOException {
        Files.writeString(
                project,
                SmallHall.PROJECT
                        .replace("evenrise-project/1", "evenrise-project/1.1")
                        .replace("\"running_a\": 20", "\"running_a\": 20, \"surge_a\": 400"));

        Shell.Result result = audit();

        assertThat(result.err()).contains("/loads/1/surge_a", "left out of account");
        assertThat(result.out()).contains("newer-format", "evenrise-project/1.1");
        assertThat(new Shell(SmallHall.sound())
                        .run("audit", project.toString(), plan.toString(), "--json")
                        .out())
                .containsPattern("\"check\": \"newer-format\",\\s+\"made\": 0,\\s+\"not_made\": 1\\b");
    }

    @Test
    void keepsNotesWhereItFillsInATypicalInrush() throws Exception {
        Files.writeString(
                project, SmallHall.PROJECT.replace("\"id\": \"amp\"", "\"id\": \"amp\", \"notes\": \"by the door\""));
        Path filled = project.resolveSibling("filled.project.json");

        new Shell(SmallHall.sound())
                .run("audit", project.toString(), plan.toString(), "--typical-inrush-into", filled.toString());

        assertThat(Files.readString(filled)).contains("{\"id\": \"amp\"").contains("\"notes\": \"by the door\"}");
    }

    @Test
    void listsWhatWasGuessedAndCountsIt() throws IOException {
        Files.writeString(
                project,
                SmallHall.PROJECT.replace(
                        "\"inrush_peak_a\": 100", "\"inrush_peak_a\": 100, \"guessed\": [\"idle_a\"]"));

        Shell.Result list = new Shell(SmallHall.sound()).run("audit", project.toString(), plan.toString(), "--guessed");

        assertThat(list.code()).isEqualTo(ExitCode.DONE);
        assertThat(list.out()).contains("1 figure of 1 load", "idle_a", "10: 1 load (amp)");
        assertThat(audit().out()).contains("Guessed: 1 figure of 1 load");
        assertThat(new Shell(SmallHall.sound())
                        .run("audit", project.toString(), plan.toString(), "--json")
                        .out())
                .contains("\"field\": \"idle_a\"");
    }

    /** The amplifier runs at 20 A: 10 times √2·20 A is 282.84 A, told to the next tenth. */
    @Test
    void proposesATypicalInrushAndWritesItAsGuessed() throws Exception {
        Files.writeString(project, Files.readString(project).replaceFirst(", \"inrush_peak_a\": 100", ""));
        Path filled = project.resolveSibling("filled.project.json");

        Shell.Result list = new Shell(SmallHall.sound())
                .run("audit", project.toString(), plan.toString(), "--typical-inrush-into", filled.toString());

        assertThat(list.code()).isEqualTo(ExitCode.DONE);
        assertThat(list.out()).contains("2 loads state no inrush_peak_a", "amplifier", "282.9", "no source");
        assertThat(Files.readString(filled)).contains("282.9", "guessed");
        assertThat(audit().out()).contains("1 switched load states no inrush_peak_a", "no bound");
        assertThat(new Shell(SmallHall.sound())
                        .run("audit", filled.toString(), plan.toString())
                        .out())
                .contains("no bound", "it is guessed");
    }

    @Test
    void refusesALoadThatIsNoFigure() {
        Shell.Result result =
                new Shell(SmallHall.sound()).run("audit", project.toString(), plan.toString(), "--next-load", "much");

        assertThat(result.code()).isEqualTo(ExitCode.USAGE);
        assertThat(result.err()).contains("'much'", "16:2");
    }

    @Test
    void endsWithFourAndNamesWhatAnEditBroke() throws IOException {
        Files.writeString(plan, Files.readString(plan).replace("\"slot\": 3", "\"slot\": 5"));

        Shell.Result result = audit();

        assertThat(result.code()).isEqualTo(ExitCode.RULES_BROKEN);
        assertThat(result.out()).contains("phase: 1 place", "load 'amp'");
    }

    @Test
    void setsFiguresThatWereEditedBesideTheTrueOnes() throws IOException {
        Files.writeString(
                plan, Files.readString(plan).replaceAll("\"peak_inrush_a\": [0-9.]+", "\"peak_inrush_a\": 80"));

        Shell.Result result = audit();

        assertThat(result.out()).containsPattern("peak_inrush_a +80\\.0+ +100\\.0+");
    }

    @Test
    void saysThatTheProjectHasChanged() throws IOException {
        Files.writeString(project, SmallHall.PROJECT + "\n");

        assertThat(audit().out()).contains("The project file is not the one the plan was made from");
    }

    @Test
    void writesJsonAndNothingElseWhenAsked() {
        Shell.Result result = new Shell(SmallHall.sound()).run("audit", project.toString(), plan.toString(), "--json");

        assertThat(result.out())
                .startsWith("{\n  \"format\": \"evenrise-audit/1\"")
                .contains("\"project_changed\": false", "\"peak_inrush_a\": 100.0", "\"violations\": []")
                .endsWith("}\n");
        assertThat(result.err()).isEmpty();
    }

    @Test
    void refusesABoardThatTheProjectDoesNotHave() throws IOException {
        Files.writeString(plan, Files.readString(plan).replace("\"B1\"", "\"B9\""));

        Shell.Result result = audit();

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains("B9");
    }

    @Test
    void isQuietWhenItsReaderWentAway() {
        Shell.Result result = new Shell(SmallHall.sound())
                .outFailsWith("Broken pipe")
                .run("audit", project.toString(), plan.toString());

        assertThat(result.code()).isEqualTo(ExitCode.DONE);
        assertThat(result.err()).isEmpty();
    }

    @Test
    void showsHostileNamesTamed() throws IOException {
        String name = "Sub\\u001b[2J\\u202eleft" + "x".repeat(400);
        Files.writeString(project, SmallHall.PROJECT.replace("Sub left", name));

        Shell.Result result = audit();

        assertThat(result.out()).doesNotContain("\u001b", "\u202e").contains("Sub?[2J?left");
        assertThat(result.out().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
    }

    private Shell.Result audit() {
        return new Shell(SmallHall.sound()).run("audit", project.toString(), plan.toString());
    }
}
