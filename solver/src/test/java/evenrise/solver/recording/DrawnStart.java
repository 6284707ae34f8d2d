package evenrise.solver.recording;

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
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/** A start of the lantern yard as built, as a recorder at its supply would write it, 25 samples a second. */
public final class DrawnStart {
    private static final Path YARD = Path.of("../datasets/lantern-yard");

    private DrawnStart() {}

    public static Layout yard() {
        Project project = ProjectFile.read(YARD.resolve("project.json")).value().orElseThrow();
        Plan plan =
                PlanFile.read(YARD.resolve("built.plan.json"), project).value().orElseThrow();
        return Layout.of(project, plan);
    }

    /**
     * @param headers of time and three currents
     * @param without a load that does not come on
     */
    public static List<String> of(Layout layout, String headers, String without) {
        double last = layout.placements().stream()
                .filter(Placement::isSequenced)
                .mapToDouble(each -> each.onSeconds().orElseThrow())
                .max()
                .orElseThrow();
        Random chance = new Random(1);
        List<String> lines = new ArrayList<>(List.of(headers));
        for (int i = 0; i * 0.04 < last + 6; i++) {
            double now = i * 0.04 - 3;
            LineCurrents amps = new LineCurrents(PhaseSystem.THREE_PHASE);
            layout.placements().stream()
                    .filter(each -> !each.id().equals(without))
                    .filter(each -> !each.isSequenced() || each.onSeconds().orElseThrow() <= now)
                    .forEach(each -> amps.add(each.phases(), each.load().idleAmps(), Lag.of(each.load())));
            StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "%.3f", 50 + now));
            for (Phase phase : Phase.values()) {
                line.append(
                        String.format(Locale.ROOT, ",%.3f", amps.line(phase).length() + 0.01 * chance.nextGaussian()));
            }
            lines.add(line.toString());
        }
        return lines;
    }

    /** A load that comes on at a time of its own. */
    public static String alone(Layout layout) {
        return layout.placements().stream()
                .filter(Placement::isSequenced)
                .filter(each -> layout.placements().stream()
                        .noneMatch(other -> other != each && other.onSeconds().equals(each.onSeconds())))
                .map(Placement::id)
                .findFirst()
                .orElseThrow();
    }
}
