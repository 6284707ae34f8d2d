package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LineCurrents;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.plan.Plan;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A start of the lantern yard as built, drawn at 25 samples a second. */
class ObserveCommandTest {
    private static final Path YARD = Path.of("../datasets/lantern-yard");

    @TempDir
    private Path folder;

    private Layout layout;

    @BeforeEach
    void readThePlan() throws IOException {
        Project project = ProjectFile.read(YARD.resolve("project.json")).value().orElseThrow();
        Plan plan =
                PlanFile.read(YARD.resolve("built.plan.json"), project).value().orElseThrow();
        layout = Layout.of(project, plan);
    }

    /** @param without a load that does not come on */
    private Path recorded(String without) throws IOException {
        double last = layout.placements().stream()
                .filter(Placement::isSequenced)
                .mapToDouble(each -> each.onSeconds().orElseThrow())
                .max()
                .orElseThrow();
        Random chance = new Random(1);
        List<String> lines = new ArrayList<>(List.of("time_s,A,B,C"));
        for (int i = 0; i * 0.04 < last + 6; i++) {
            double now = i * 0.04 - 3;
            LineCurrents lines3 = new LineCurrents(PhaseSystem.THREE_PHASE);
            layout.placements().stream()
                    .filter(each -> !each.id().equals(without))
                    .filter(each -> !each.isSequenced() || each.onSeconds().orElseThrow() <= now)
                    .forEach(each -> lines3.add(each.phases(), each.load().idleAmps(), Lag.of(each.load())));
            StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "%.3f", 50 + now));
            for (Phase phase : Phase.values()) {
                line.append(String.format(
                        Locale.ROOT, ",%.3f", lines3.line(phase).length() + 0.01 * chance.nextGaussian()));
            }
            lines.add(line.toString());
        }
        return Files.write(folder.resolve("start.csv"), lines);
    }

    private Shell.Result observe(String recording, String... rest) {
        List<String> arguments = new ArrayList<>(List.of(
                "observe",
                YARD.resolve("project.json").toString(),
                YARD.resolve("built.plan.json").toString(),
                recording));
        arguments.addAll(List.of(rest));
        return new Shell(SmallHall.sound()).run(arguments.toArray(String[]::new));
    }

    @Test
    void saysThatAStartIsAsPlanned() throws IOException {
        Shell.Result result = observe(recorded("").toString());

        assertThat(result.err()).isEmpty();
        assertThat(result.out())
                .contains("Recorded start at", "Nothing that could be seen is other than planned.", "'A': current of")
                .containsPattern("The command was given at 50\\.0[0-9]{2} s");
        assertThat(result.code()).isEqualTo(ExitCode.DONE);
    }

    @Test
    void namesALoadThatDoesNotComeOn() throws IOException {
        String dead = layout.placements().stream()
                .filter(Placement::isSequenced)
                .filter(each -> layout.placements().stream()
                        .noneMatch(other -> other != each && other.onSeconds().equals(each.onSeconds())))
                .map(Placement::id)
                .findFirst()
                .orElseThrow();

        Shell.Result result = observe(recorded(dead).toString());

        assertThat(result.out())
                .contains("Something is other than planned.", "does not come on")
                .containsPattern("(?m)^ *" + dead + " ");
        assertThat(result.code()).isEqualTo(ExitCode.RULES_BROKEN);
    }

    @Test
    void refusesAPlaceThatIsNone() throws IOException {
        Shell.Result result = observe(recorded("").toString(), "--at", "NOWHERE");

        assertThat(result.code()).isEqualTo(ExitCode.USAGE);
        assertThat(result.err()).contains("no panel or node 'NOWHERE'");
    }

    @Test
    void saysWhatATableIsToHold() throws IOException {
        Path other = Files.writeString(folder.resolve("other.csv"), "one,two\n1,2\n");

        Shell.Result result = observe(other.toString());

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains("Name the columns time_s");
    }
}
