package evenrise.solver.engine;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.LinearExpr;
import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.rules.Tolerances;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Rules of boards, groups and order in the exact model. */
final class ExactModelOrder {
    private final CpModel model;
    private final Project project;
    private final ExactModelPlaces places;
    private final ExactModelTimes times;
    private final List<Load> switched;

    private ExactModelOrder(CpModel model, Project project, ExactModelPlaces places, ExactModelTimes times) {
        this.model = model;
        this.project = project;
        this.places = places;
        this.times = times;
        this.switched = project.loads().stream().filter(Load::switched).toList();
    }

    /** Adds every rule about which load shares a board with which, and which comes on before which. */
    static void add(CpModel model, Project project, ExactModelPlaces places, ExactModelTimes times) {
        ExactModelOrder it = new ExactModelOrder(model, project, places, times);
        project.boards().forEach(it::reach);
        project.boards().forEach(it::emergency);
        project.shutdownGroups().forEach(it::whole);
        project.shutdownGroups().forEach(group -> project.boards().forEach(board -> it.run(group, board)));
        it.roles();
        it.order();
        it.duration();
    }

    static List<Load> members(Project project, ShutdownGroup group) {
        return project.loads().stream()
                .filter(load -> load.shutdownGroup().equals(Optional.of(group.id())))
                .toList();
    }

    private void reach(Board board) {
        for (Panel panel : project.panels()) {
            if (!board.reaches().contains(panel.id())) {
                switched.forEach(load -> notBoth(times.on(load, board), places.in(load.id(), panel.id())));
            }
        }
    }

    private void emergency(Board board) {
        Map<String, Boolean> drops = project.shutdownGroups().stream()
                .collect(Collectors.toMap(ShutdownGroup::id, group -> group.onEmergency() == OnEmergency.DROP));
        BoolVar drop = model.newBoolVar(board.id() + " drops");
        for (Load load : switched) {
            boolean falls = load.shutdownGroup().map(drops::get).orElse(false);
            model.addLessOrEqual(times.on(load, board), falls ? drop : drop.not());
        }
    }

    private void whole(ShutdownGroup group) {
        List<Load> members = members(project, group);
        int largest = project.boards().stream()
                .mapToInt(board -> times.type(board).outputs())
                .max()
                .orElse(0);
        for (Board board : project.boards()) {
            for (Load member : members) {
                if (members.size() <= largest) {
                    model.addEquality(times.on(members.get(0), board), times.on(member, board));
                } else {
                    switched.stream()
                            .filter(other -> !members.contains(other))
                            .forEach(other -> notBoth(times.on(member, board), times.on(other, board)));
                }
            }
        }
    }

    /** Not: a member, then another load, then a member. */
    private void run(ShutdownGroup group, Board board) {
        List<Load> members = members(project, group);
        List<Load> others =
                switched.stream().filter(load -> !members.contains(load)).toList();
        int count = times.type(board).outputs();
        for (int first = 1; first <= count; first++) {
            for (int between = first + 1; between <= count; between++) {
                for (int last = between + 1; last <= count; last++) {
                    model.addLessOrEqual(
                            LinearExpr.newBuilder()
                                    .add(times.on(new ExactModelTimes.Output(board.id(), first), members))
                                    .add(times.on(new ExactModelTimes.Output(board.id(), between), others))
                                    .add(times.on(new ExactModelTimes.Output(board.id(), last), members)),
                            2);
                }
            }
        }
    }

    private void roles() {
        for (Load earlier : switched) {
            for (Load later : switched) {
                boolean settles = earlier.role() == Role.PROCESSING && later.role() == Role.AMPLIFIER;
                if (settles
                        || earlier.role() == Role.PROCESSING && later.role() == Role.AUXILIARY
                        || earlier.role() == Role.AUXILIARY && later.role() == Role.AMPLIFIER) {
                    inOrder(earlier, settles ? earlier.settleSeconds() : 0, later);
                }
            }
        }
    }

    private void order() {
        for (Load later : switched) {
            switched.stream()
                    .filter(earlier -> later.comesAfter().contains(earlier.id()))
                    .forEach(earlier -> inOrder(earlier, earlier.settleSeconds(), later));
        }
    }

    /** Times and settling are whole milliseconds here, so that the half millisecond of slack changes nothing. */
    private void inOrder(Load earlier, double settleSeconds, Load later) {
        long settle = ExactModelUnits.exactly(settleSeconds, ExactModelUnits.PER_SECOND);
        model.addLessOrEqual(times.on(earlier, settle), times.on(later, 0));
    }

    private void duration() {
        project.maxDurationSeconds().ifPresent(most -> {
            long millis = (long) Math.floor((most + Tolerances.SECONDS) * ExactModelUnits.PER_SECOND);
            switched.forEach(load -> model.addLessOrEqual(times.on(load, 0), millis));
        });
    }

    private void notBoth(LinearExpr one, LinearExpr other) {
        model.addLessOrEqual(LinearExpr.newBuilder().add(one).add(other), 1);
    }
}
