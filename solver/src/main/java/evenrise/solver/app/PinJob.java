package evenrise.solver.app;

import evenrise.model.file.Format;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.rules.PlanFinisher;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/** Pins what a plan says of some loads, or sets them free: rewrites what the project calls fixed. */
final class PinJob {
    private final PinRequest request;
    private final Watch watch;

    PinJob(PinRequest request, Watch watch) {
        this.request = request;
        this.watch = watch;
    }

    PinResult run() {
        List<Source> inputs = new ArrayList<>(List.of(request.project()));
        request.plan().ifPresent(inputs::add);
        Outputs.refuseInputs(request.into(), inputs);
        Reading<Project> read = Inputs.project(request.project(), watch.notes());
        Project project = read.value().orElseThrow();
        refuseUnknown(project);
        Map<String, Assignment> places = new LinkedHashMap<>();
        request.plan().ifPresent(source -> {
            Plan plan = Inputs.plan(source, project, watch.notes()).value().orElseThrow();
            PlanFinisher.timed(project, plan).assignments().forEach(each -> places.put(each.load(), each));
        });
        List<Load> loads = project.loads().stream()
                .map(load -> load.withFixed(
                        request.plan().isPresent()
                                ? pinned(load, Optional.ofNullable(places.get(load.id())))
                                : freed(load)))
                .toList();
        Project result = project.withLoads(loads);
        watch.at(Stage.WRITING);
        Outputs.write(() -> ProjectFile.write(
                result,
                read.notes(),
                request.into(),
                Format.ofName(request.into().toString())));
        int changed = 0;
        int held = 0;
        for (int i = 0; i < loads.size(); i++) {
            changed += loads.get(i).fixed().equals(project.loads().get(i).fixed()) ? 0 : 1;
            held += loads.get(i).fixed().equals(FixedPlace.NONE) ? 0 : 1;
        }
        return new PinResult(result, changed, held);
    }

    /** With the plan's word on what is asked for beside what is fixed already; the plan's word is the newer. */
    private FixedPlace pinned(Load load, Optional<Assignment> place) {
        if (place.isEmpty()) {
            return load.fixed();
        }
        Assignment at = place.get();
        PinnedLoads which = request.which();
        boolean whole = isWhole(load);
        FixedPlace fixed = load.fixed();
        if (whole || which.panels().contains(at.panel())) {
            fixed = fixed.withPanel(Optional.of(at.panel())).withSlot(OptionalInt.of(at.slot()));
        }
        boolean switched = whole || at.board().filter(which.boards()::contains).isPresent();
        if (switched && at.board().isPresent()) {
            fixed = fixed.withBoard(at.board()).withOutput(at.output());
        }
        boolean touched = switched || !fixed.equals(load.fixed());
        if (request.times()
                && touched
                && at.onSeconds().isPresent()
                && at.board().isPresent()) {
            fixed = fixed.withOnSeconds(at.onSeconds());
        }
        return fixed;
    }

    private FixedPlace freed(Load load) {
        PinnedLoads which = request.which();
        FixedPlace fixed = load.fixed();
        if (isWhole(load)) {
            return FixedPlace.NONE;
        }
        if (fixed.panel().filter(which.panels()::contains).isPresent()) {
            fixed = fixed.withPanel(Optional.empty()).withSlot(OptionalInt.empty());
        }
        if (fixed.board().filter(which.boards()::contains).isPresent()) {
            fixed = fixed.withBoard(Optional.empty())
                    .withOutput(OptionalInt.empty())
                    .withOnSeconds(OptionalDouble.empty());
        }
        return fixed;
    }

    private boolean isWhole(Load load) {
        PinnedLoads which = request.which();
        return which.all()
                || which.loads().contains(load.id())
                || load.shutdownGroup().filter(which.groups()::contains).isPresent();
    }

    private void refuseUnknown(Project project) {
        PinnedLoads which = request.which();
        List<String> problems = new ArrayList<>();
        if (which.isEmpty()) {
            problems.add("nothing says which loads. Maybe name panels, boards, groups or loads, or all of them.");
        }
        unknown(
                "panel",
                which.panels(),
                ids(project.panels().stream().map(Panel::id).toList()),
                problems);
        unknown(
                "board",
                which.boards(),
                ids(project.boards().stream().map(Board::id).toList()),
                problems);
        unknown(
                "group",
                which.groups(),
                ids(project.shutdownGroups().stream().map(ShutdownGroup::id).toList()),
                problems);
        unknown(
                "load",
                which.loads(),
                ids(project.loads().stream().map(Load::id).toList()),
                problems);
        if (!problems.isEmpty()) {
            throw new JobFailed(JobFailed.Reason.REQUEST, problems);
        }
    }

    private static Set<String> ids(List<String> ids) {
        return ids.stream().collect(Collectors.toSet());
    }

    private static void unknown(String what, List<String> asked, Set<String> known, List<String> problems) {
        asked.stream()
                .filter(each -> !known.contains(each))
                .forEach(each -> problems.add("the project has no " + what + " '" + each + "'."));
    }
}
