package evenrise.model.measured;

import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.Scene;
import evenrise.model.project.SceneUse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * A use of the plant that was measured more than once, as a scene of its project. A load counts as less than full where two
 * visits at least read it, on every pole, and it drew each time: then with the greatest of the readings and all that the
 * meter may be off by on top. Every other load counts in full. A project without scenes is given one of full use beside it,
 * so that no rule sees less than before.
 *
 * @param scene that stands in the project, where some load counts as less
 * @param parts loads that count as less, in the project's order
 * @param notTwice loads that count in full since they were not read twice on every pole
 * @param dead loads that count in full though they were read, since they did not draw on a visit
 */
public record UseScene(Scene scene, List<Part> parts, List<String> notTwice, List<String> dead) {
    /** Of the scene in which everything is in full use. */
    public static final String FULL_USE = "full-use";

    private static final int FEWEST_VISITS = 2;
    /** Parts are rounded up to it, so that files hold no remainders of arithmetic. */
    private static final double STEP = 1e-4;

    /**
     * A load that draws less than full.
     *
     * @param factor of its running current, with all that the readings may be off by
     * @param visits that read it
     * @param leastAmps rms, the least of the visits' greatest poles as read
     * @param greatestAmps rms, the greatest as read
     */
    public record Part(String load, double factor, int visits, double leastAmps, double greatestAmps) {}

    public UseScene {
        parts = List.copyOf(parts);
        notTwice = List.copyOf(notTwice);
        dead = List.copyOf(dead);
    }

    /**
     * What readings in one use come to.
     *
     * @param project that holds what was measured
     * @param id of the scene; no scene of the project has it
     */
    public static UseScene of(Project project, SiteReadings readings, String id) {
        List<Part> parts = new ArrayList<>();
        List<String> notTwice = new ArrayList<>();
        List<String> dead = new ArrayList<>();
        for (Load load : project.loads()) {
            List<Greatest> visits = visits(load, readings.of(load.id()));
            if (visits.size() < FEWEST_VISITS) {
                notTwice.add(load.id());
            } else if (visits.stream().anyMatch(each -> each.amps() <= each.error())) {
                dead.add(load.id());
            } else {
                part(load, visits).ifPresent(parts::add);
            }
        }
        List<SceneUse> use = parts.stream()
                .map(each -> SceneUse.builder()
                        .loads(Optional.of(List.of(each.load())))
                        .factor(each.factor())
                        .build())
                .toList();
        return new UseScene(Scene.builder().id(id).use(use).build(), parts, notTwice, dead);
    }

    /** The project with it, and with one of full use where it had no scene; as it was where no load counts as less. */
    public Project in(Project project) {
        if (parts.isEmpty()) {
            return project;
        }
        List<Scene> scenes = new ArrayList<>(project.scenes());
        if (scenes.isEmpty()) {
            scenes.add(Scene.builder()
                    .id(scene.id().equals(FULL_USE) ? FULL_USE + "-of-all" : FULL_USE)
                    .build());
        }
        scenes.add(scene);
        return project.withScenes(scenes);
    }

    private record Greatest(double amps, double error) {
        double upper() {
            return amps + error;
        }
    }

    private static Optional<Part> part(Load load, List<Greatest> visits) {
        double upper = visits.stream().mapToDouble(Greatest::upper).max().orElseThrow();
        double factor = Math.ceil(upper / load.runningAmps() / STEP - 1e-6) * STEP;
        return factor >= 1
                ? Optional.empty()
                : Optional.of(new Part(
                        load.id(),
                        Math.round(factor / STEP) * STEP,
                        visits.size(),
                        visits.stream().mapToDouble(Greatest::amps).min().orElseThrow(),
                        visits.stream().mapToDouble(Greatest::amps).max().orElseThrow()));
    }

    /** By day, the pole that read most, where every pole was read, or all of them as alike. */
    private static List<Greatest> visits(Load load, List<PoleReading> own) {
        Map<String, List<PoleReading>> days = new TreeMap<>();
        own.stream()
                .filter(each -> each.runningAmps().isPresent())
                .forEach(each -> each.visit()
                        .date()
                        .ifPresent(day -> days.computeIfAbsent(day, any -> new ArrayList<>())
                                .add(each)));
        return days.values().stream()
                .filter(read -> isWhole(load, read) && read.stream().noneMatch(UseScene::isOverRange))
                .map(UseScene::greatest)
                .toList();
    }

    private static boolean isWhole(Load load, List<PoleReading> read) {
        return read.stream().anyMatch(each -> each.phase().isEmpty())
                || read.stream().map(PoleReading::phase).distinct().count() >= load.poles();
    }

    private static boolean isOverRange(PoleReading read) {
        return read.visit().meter().isOverRange(read.runningAmps().orElseThrow());
    }

    private static Greatest greatest(List<PoleReading> read) {
        return read.stream()
                .map(each -> greatest(each.runningAmps(), each.visit().meter()))
                .reduce((one, other) -> other.upper() > one.upper() ? other : one)
                .orElseThrow();
    }

    private static Greatest greatest(OptionalDouble amps, Meter meter) {
        double read = amps.orElseThrow();
        return new Greatest(read, meter.errorAmps(read));
    }
}
