package evenrise.model.observation;

import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLoads;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What a plan lets come on at one moment, as a place of the distribution sees it: one load, or several that no recording
 * of this interval tells apart.
 *
 * @param loads their ids, in the plan's order
 * @param boards that switch them, each once
 * @param seconds from the command
 * @param amps rms idle current by phase: what flows once a load is on and the show has not begun
 * @param readAmps how much more a clamp then reads, since currents at different angles do not add up as they are
 * @param surgeAmps what stated inrush comes to by phase, as rms
 * @param longestHalfSeconds in which the slowest of their surges halves; 0 without a surge
 */
public record ExpectedStart(
        List<String> loads,
        List<String> boards,
        double seconds,
        Map<Phase, Double> amps,
        Map<Phase, Double> readAmps,
        Map<Phase, Double> surgeAmps,
        double longestHalfSeconds) {
    /** Surges that halve in more are motors that run up (common practice, no source). */
    private static final double RUN_UP_SECONDS = 0.1;

    private static final double MILLIS = 1000;

    /**
     * Those of one command at one place.
     *
     * @param point index of the place in the layout's distribution
     * @param system whose command it is; empty where the plant has no systems
     * @param togetherSeconds what is no further apart is one start
     */
    static List<ExpectedStart> of(Layout layout, int point, Optional<String> system, double togetherSeconds) {
        List<NodeLoads.Seen> seen = seen(layout, point, system);
        ClampReading clamp = new ClampReading(layout, point, seen, ExpectedStart::on);
        List<ExpectedStart> starts = new ArrayList<>();
        for (int i = 0; i < seen.size(); ) {
            double begin = on(seen.get(i));
            int j = i + 1;
            while (j < seen.size() && on(seen.get(j)) - begin <= togetherSeconds) {
                j++;
            }
            starts.add(of(seen.subList(i, j), begin, clamp));
            i = j;
        }
        return starts;
    }

    private static List<NodeLoads.Seen> seen(Layout layout, int point, Optional<String> system) {
        return layout.nodeLoads().seen(point).stream()
                .filter(each -> each.placement().isSequenced())
                .filter(each -> each.placement().load().system().equals(system))
                .sorted(Comparator.comparingDouble(ExpectedStart::on))
                .toList();
    }

    /**
     * Two starts at each other's time: what a clamp then reads of the first where the second is planned, and of the second
     * where the first is, beside what flows there by then.
     */
    static List<ExpectedStart> exchanged(
            Layout layout, int point, Optional<String> system, ExpectedStart one, ExpectedStart other) {
        List<NodeLoads.Seen> seen = seen(layout, point, system);
        ClampReading clamp = new ClampReading(layout, point, seen, each -> {
            String id = each.placement().id();
            return one.loads.contains(id) ? other.seconds : other.loads.contains(id) ? one.seconds : on(each);
        });
        return List.of(
                of(
                        seen.stream()
                                .filter(each ->
                                        one.loads.contains(each.placement().id()))
                                .toList(),
                        other.seconds,
                        clamp),
                of(
                        seen.stream()
                                .filter(each ->
                                        other.loads.contains(each.placement().id()))
                                .toList(),
                        one.seconds,
                        clamp));
    }

    private static double on(NodeLoads.Seen seen) {
        return seen.placement().onSeconds().orElseThrow();
    }

    private static ExpectedStart of(List<NodeLoads.Seen> together, double seconds, ClampReading clamp) {
        Map<Phase, Double> amps = new EnumMap<>(Phase.class);
        Map<Phase, Double> surges = new EnumMap<>(Phase.class);
        for (NodeLoads.Seen each : together) {
            for (Phase phase : Phase.values()) {
                double part = each.parts()[phase.ordinal()];
                if (part > 0) {
                    Load load = each.placement().load();
                    amps.merge(phase, part * load.idleAmps(), Double::sum);
                    surges.merge(phase, part * load.inrushPeakAmps().orElse(0) / Math.sqrt(2), Double::sum);
                }
            }
        }
        return new ExpectedStart(
                together.stream().map(each -> each.placement().id()).toList(),
                together.stream()
                        .flatMap(each -> each.placement().board().stream())
                        .map(board -> board.id())
                        .distinct()
                        .toList(),
                seconds,
                amps,
                clamp.more(together, seconds),
                surges,
                together.stream()
                        .map(each -> each.placement().load())
                        .filter(load -> load.inrushPeakAmps().isPresent())
                        .mapToDouble(load -> load.inrushHalfMillis() / MILLIS)
                        .max()
                        .orElse(0));
    }

    double amps(Phase phase) {
        return amps.getOrDefault(phase, 0.0);
    }

    /** The same as a clamp reads it. */
    double readAmps(Phase phase) {
        return readAmps.getOrDefault(phase, 0.0);
    }

    double greatestAmps() {
        double greatest = 0;
        for (double each : amps.values()) {
            greatest = Math.max(greatest, each);
        }
        return greatest;
    }

    /** Whether its surges are no single one that is over soon, so that what flows in the end may hide behind them. */
    boolean isVague() {
        return loads.size() > 1 || runsUp();
    }

    /** Whether a motor among them runs up, as its long surge says. */
    boolean runsUp() {
        return longestHalfSeconds > RUN_UP_SECONDS;
    }

    /** What is left of its surge on a phase some time later. */
    double surgeLeftAmps(Phase phase, double seconds) {
        double surge = surgeAmps.getOrDefault(phase, 0.0);
        return surge == 0 ? 0 : surge * Math.pow(2, -seconds / longestHalfSeconds);
    }

    /** The same plan with one board set otherwise. */
    static Layout withSetting(Layout layout, BoardSetting setting) {
        Plan plan = layout.plan();
        List<BoardSetting> boards = plan.boards().stream()
                .map(each -> each.id().equals(setting.id()) ? setting : each)
                .toList();
        return Layout.of(layout.index(), plan.with().boards(boards).build());
    }

    /** Whether everything that the place sees arrives there as it is, not through a transformer. */
    static boolean isDirect(Layout layout, int point) {
        List<Placement> direct = layout.nodeLoads().direct(point);
        return direct.size()
                == layout.nodeLoads().seen(point).stream()
                        .map(NodeLoads.Seen::placement)
                        .collect(Collectors.toSet())
                        .size();
    }
}
