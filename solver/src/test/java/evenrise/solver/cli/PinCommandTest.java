package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.plan.Plan;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.rules.Referee;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An amplifier in slot 3 of P1 on output 2 of B1, on at 0.75 s; a processor, not switched, in slot 1. */
class PinCommandTest {
    @TempDir
    private Path folder;

    private Path project;
    private Path plan;
    private Path held;

    @BeforeEach
    void planTheProject() throws IOException {
        project = Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT);
        plan = folder.resolve("hall.plan.json");
        held = folder.resolve("held.json");
        new Shell(SmallHall.sound()).run("plan", project.toString());
    }

    private Shell.Result pin(String... rest) {
        List<String> arguments = new ArrayList<>(List.of("pin", project.toString(), plan.toString()));
        arguments.addAll(List.of(rest));
        arguments.addAll(List.of("-o", held.toString()));
        return new Shell(SmallHall.sound()).run(arguments.toArray(String[]::new));
    }

    private static Project read(Path file) {
        return ProjectFile.read(file).value().orElseThrow();
    }

    private FixedPlace fixed(String load) {
        return read(held).loads().stream()
                .filter(each -> each.id().equals(load))
                .map(Load::fixed)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void ofAPanelHoldsSlotsAlone() {
        assertThat(pin("--panel", "P1").out()).contains("Held now: 2 of 2 loads, 2 of them otherwise than before.");

        assertThat(fixed("amp").slot()).hasValue(3);
        assertThat(fixed("amp").board()).isEmpty();
        assertThat(fixed("amp").onSeconds()).isEmpty();
    }

    @Test
    void ofABoardHoldsOutputsAlone() {
        pin("--board", "B1");

        assertThat(fixed("amp").panel()).isEmpty();
        assertThat(fixed("amp").output()).hasValue(2);
        assertThat(fixed("dsp")).isEqualTo(FixedPlace.NONE);
    }

    @Test
    void ofAnIssuedPlanHoldsEverythingAndItsTimes() {
        pin("--all", "--times");

        assertThat(fixed("amp").onSeconds()).hasValue(0.75);
        assertThat(fixed("dsp").slot()).hasValue(1);
        Plan issued = PlanFile.read(plan, read(project)).value().orElseThrow();
        assertThat(Referee.judge(read(held), issued).violations()).isEmpty();
    }

    @Test
    void aPlanThatMovesWhatIsHeldBreaksTheRule() {
        pin("--load", "amp");
        Path moved = folder.resolve("moved.plan.json");
        new Shell(SmallHall.moved()).run("plan", project.toString(), "-o", moved.toString());

        Plan other = PlanFile.read(moved, read(project)).value().orElseThrow();

        assertThat(Referee.judge(read(held), other).violations())
                .extracting("rule")
                .containsOnly("fixed");
    }

    @Test
    void whatIsSetFreeIsAsItWas() {
        pin("--all", "--times");
        Path free = folder.resolve("free.json");

        Shell.Result result =
                new Shell(SmallHall.sound()).run("unpin", held.toString(), "--all", "-o", free.toString());

        assertThat(result.out()).contains("Held now: 0 of 2 loads, 2 of them otherwise than before.");
        assertThat(read(free).loads()).isEqualTo(read(project).loads());
    }

    @Test
    void settingAPanelFreeLeavesOutputsHeld() {
        pin("--all");
        Path free = folder.resolve("free.json");

        new Shell(SmallHall.sound()).run("unpin", held.toString(), "--panel", "P1", "-o", free.toString());

        FixedPlace amp = read(free).loads().get(1).fixed();
        assertThat(amp.panel()).isEmpty();
        assertThat(amp.slot()).isEmpty();
        assertThat(amp.output()).hasValue(2);
    }

    @Test
    void refusesWhatTheProjectDoesNotHaveAllAtOnce() {
        Shell.Result result = pin("--panel", "P9", "--board", "B9", "--load", "nobody");

        assertThat(result.code()).isEqualTo(ExitCode.USAGE);
        assertThat(result.err()).contains("no panel 'P9'", "no board 'B9'", "no load 'nobody'");
        assertThat(held).doesNotExist();
    }

    @Test
    void asksWhich() {
        assertThat(pin().code()).isEqualTo(ExitCode.USAGE);
    }
}
