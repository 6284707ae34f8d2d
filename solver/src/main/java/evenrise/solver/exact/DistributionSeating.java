package evenrise.solver.exact;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.LinearExpr;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.rules.ProjectIndex;
import evenrise.solver.bounds.Seats;
import evenrise.solver.bounds.Seats.Seat;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Which panel and phases each load has in a program over a distribution, and what must sit together. */
final class DistributionSeating {
    /** A way to sit, and whether it is taken. */
    record Choice(Seat seat, BoolVar taken) {}

    private final CpModel model;
    private final ProjectIndex index;
    private final Project project;
    private final Seats seats;
    private final List<Load> loads;
    private final Map<String, List<Choice>> choices = new LinkedHashMap<>();

    /** @throws Unfit where a load fits nowhere */
    DistributionSeating(CpModel model, ProjectIndex index, Seats seats, List<Load> loads) {
        this.model = model;
        this.index = index;
        this.project = index.project();
        this.seats = seats;
        this.loads = loads;
        loads.forEach(this::choose);
        loads.forEach(this::stayTogether);
        sameGroupsTogether();
        keepRoom();
    }

    List<Choice> of(Load load) {
        return choices.get(load.id());
    }

    /** Only on boards that reach where it sits. */
    void reach(DistributionBoards boards) {
        loads.forEach(load -> reach(load, boards));
    }

    private void choose(Load load) {
        List<Choice> own = seats.of(load).stream()
                .map(seat -> new Choice(seat, model.newBoolVar("")))
                .toList();
        if (own.isEmpty()) {
            throw new Unfit("load '" + load.id() + "' fits nowhere");
        }
        choices.put(load.id(), own);
        model.addExactlyOne(own.stream().map(Choice::taken).toArray(BoolVar[]::new));
    }

    /** What is behind a contactor sits in the panel of the load that it is for. */
    private void stayTogether(Load load) {
        load.comesWith().ifPresent(lead -> samePanel(lead, load.id()));
    }

    private void sameGroupsTogether() {
        Map<String, String> first = new HashMap<>();
        for (Load load : loads) {
            boolean isTogether = load.switched()
                    && load.shutdownGroup()
                            .flatMap(index::group)
                            .filter(group -> group.samePanel())
                            .isPresent();
            if (isTogether) {
                String before = first.putIfAbsent(load.shutdownGroup().get(), load.id());
                if (before != null) {
                    samePanel(before, load.id());
                }
            }
        }
    }

    private void samePanel(String one, String other) {
        for (int panel = 0; panel < project.panels().size(); panel++) {
            model.addEquality(inPanel(one, panel), inPanel(other, panel));
        }
    }

    private LinearExpr inPanel(String load, int panel) {
        return ExactModelUnits.sum(choices.get(load).stream()
                .filter(choice -> choice.seat().panel() == panel)
                .map(Choice::taken)
                .toList());
    }

    private void keepRoom() {
        Map<String, List<DistributionRoom.Seated>> ways = new HashMap<>();
        choices.forEach((load, own) -> ways.put(
                load,
                own.stream()
                        .map(each -> new DistributionRoom.Seated(
                                each.seat().panel(), each.seat().phases(), each.taken()))
                        .toList()));
        new DistributionRoom(model, project, seats.distribution(), loads).keep(ways);
    }

    private void reach(Load load, DistributionBoards boards) {
        for (int panel = 0; panel < project.panels().size(); panel++) {
            int at = panel;
            if (choices.get(load.id()).stream().anyMatch(each -> each.seat().panel() == at)) {
                boards.reach(load, project.panels().get(panel).id(), inPanel(load.id(), panel));
            }
        }
    }
}
