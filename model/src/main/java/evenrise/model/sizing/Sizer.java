package evenrise.model.sizing;

import evenrise.model.plan.Plan;
import evenrise.model.plan.Review;
import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.Electrical;
import evenrise.model.project.Equipment;
import evenrise.model.project.Feeder;
import evenrise.model.project.Load;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.review.ElectricalReview;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Sizes a project from the load up: breakers, then transformers, then feeders from the supply down, then the branches, whose
 * drop counts from the supply, then what must interrupt a fault behind the cables so found.
 */
public final class Sizer {
    private static final String STATE_PRACTICE = "state electrical.practice";

    private final Project project;
    private final Optional<Plan> plan;
    private final Practice practice;
    private final Draft draft = new Draft();
    private final List<Proposal> proposals = new ArrayList<>();
    private final Layout layout;

    private Sizer(Project project, Optional<Plan> plan, Practice practice) {
        this.project = project;
        this.plan = plan;
        this.practice = practice;
        this.layout = layoutOf(project);
    }

    /** @param plan that says what hangs on which panel; without one breakers and branches are sized, by current alone */
    public static Sizes of(Project project, Optional<Plan> plan) {
        Optional<Practice> practice = project.electrical().flatMap(Electrical::practice);
        if (practice.isEmpty()) {
            List<Proposal> none = project.loads().stream()
                    .map(load -> notSized(Part.BREAKER, load.id(), load.name(), STATE_PRACTICE))
                    .toList();
            return new Sizes(none, project, List.of(), plan.isPresent());
        }
        return new Sizer(project, plan, practice.get()).sizes();
    }

    private static Proposal notSized(Part part, String place, String label, String why) {
        return new Proposal(part, place, label, Optional.empty(), Optional.empty(), List.of(), why);
    }

    private Layout layoutOf(Project tried) {
        return Layout.of(
                tried, plan.orElseGet(() -> Plan.builder().format(Plan.FORMAT).build()));
    }

    private Sizes sizes() {
        breakers();
        if (plan.isPresent()) {
            transformers();
            feeders();
        }
        branches();
        if (plan.isPresent()) {
            interrupting();
        }
        Project taken = draft.into(project);
        Set<String> last = Stream.concat(Criteria.ALL_CHECKS.stream(), Stream.of("breaker-trip"))
                .collect(Collectors.toSet());
        return new Sizes(
                proposals, taken, ElectricalReview.of(layoutOf(taken), last).remarks(), plan.isPresent());
    }

    private List<Proposal> climb(
            Part part,
            List<Criterion> criteria,
            Map<String, List<Size>> ladders,
            Map<String, Optional<Size>> stated,
            Map<String, String> labels) {
        Set<String> checks = Criteria.checks(criteria);
        Supplier<Review> review = () -> ElectricalReview.of(layoutOf(draft.into(project)), checks);
        List<Proposal> found = new Climb(part, criteria, draft, review).climb(ladders, stated, labels);
        proposals.addAll(found);
        return found;
    }

    private void breakers() {
        Map<String, List<Size>> ladders = new LinkedHashMap<>();
        Map<String, List<Size>> motors = new LinkedHashMap<>();
        Map<String, Optional<Size>> stated = new LinkedHashMap<>();
        for (Load load : project.loads()) {
            stated.put(load.id(), Optional.of(Size.amps(load.breakerAmps())));
            boolean isMotor = practice == Practice.NEC
                    && load.equipment().flatMap(Equipment::motor).isPresent();
            if (isMotor) {
                motors.put(load.id(), Ladder.ratingsFromAbove(practice));
            } else {
                ladders.put(load.id(), Ladder.ratings(practice));
            }
        }
        climb(Part.BREAKER, List.of(Criteria.BREAKER), ladders, stated, loadNames());
        climb(Part.BREAKER, List.of(Criteria.MOTOR_BREAKER), motors, stated, loadNames());
    }

    private Map<String, String> loadNames() {
        return project.loads().stream().collect(Collectors.toMap(Load::id, Load::name, (first, second) -> first));
    }

    private void branches() {
        Map<String, List<Size>> ladders = new LinkedHashMap<>();
        Map<String, Optional<Size>> stated = new LinkedHashMap<>();
        for (Load load : project.loads()) {
            Optional<Cable> cable = load.circuit().flatMap(Circuit::cable);
            Optional<Size> size = cable.flatMap(Size::of);
            if (size.isEmpty()) {
                proposals.add(notSized(
                        Part.BRANCH_CABLE,
                        load.id(),
                        load.name(),
                        cable.isEmpty()
                                ? "state circuit.cable, its length_m and any size"
                                : "state a size with a table in circuit.cable"));
            } else {
                ladders.put(load.id(), Ladder.cables(size.get().conductor().orElseThrow()));
                stated.put(load.id(), size);
            }
        }
        climb(Part.BRANCH_CABLE, Criteria.branchCable(practice), ladders, stated, loadNames());
    }

    private void transformers() {
        Map<String, List<Size>> ladders = new LinkedHashMap<>();
        Map<String, Optional<Size>> stated = new LinkedHashMap<>();
        Map<String, String> labels = new LinkedHashMap<>();
        for (Point point : layout.distribution().points()) {
            point.node().flatMap(node -> node.transformer()).ifPresent(transformer -> {
                boolean isThreePhase = point.system().phases().size() == 3;
                ladders.put(point.id(), Ladder.transformers(practice, isThreePhase));
                stated.put(point.id(), size(transformer.ratedKva()).map(Size::kilovoltamperes));
                labels.put(point.id(), point.label());
            });
        }
        climb(Part.TRANSFORMER, List.of(Criteria.TRANSFORMER), ladders, stated, labels);
    }

    private static Optional<Double> size(OptionalDouble stated) {
        return stated.isPresent() ? Optional.of(stated.getAsDouble()) : Optional.empty();
    }

    /** From the supply down, as the loop of a fault goes through what lies before. */
    private void feeders() {
        Map<Integer, List<Point>> byDepth = new TreeMap<>();
        for (Point point : layout.distribution().points()) {
            if (!point.isSupply() && !point.isFurtherSource()) {
                byDepth.computeIfAbsent(depth(point), any -> new ArrayList<>()).add(point);
            }
        }
        byDepth.values().forEach(this::feeders);
    }

    private int depth(Point point) {
        return point.parent() < 0 ? 0 : 1 + depth(layout.distribution().points().get(point.parent()));
    }

    private void feeders(List<Point> points) {
        Map<String, List<Size>> devices = new LinkedHashMap<>();
        Map<String, List<Size>> cables = new LinkedHashMap<>();
        Map<String, Optional<Size>> ratings = new LinkedHashMap<>();
        Map<String, Optional<Size>> sizes = new LinkedHashMap<>();
        Map<String, String> labels = new LinkedHashMap<>();
        for (Point point : points) {
            Optional<Size> size = point.feeder().flatMap(Feeder::cable).flatMap(Size::of);
            if (layout.nodeLoads().seen(point.index()).isEmpty()) {
                proposals.add(
                        notSized(Part.FEEDER_CABLE, point.id(), point.label(), "the plan puts no load behind it"));
            } else if (point.feeder().flatMap(Feeder::tap).isPresent()) {
                proposals.add(notSized(
                        Part.FEEDER_CABLE,
                        point.id(),
                        point.label(),
                        "its feeder is a tap: the review holds it against the device before it"));
            } else if (size.isEmpty()) {
                proposals.add(notSized(
                        Part.FEEDER_CABLE,
                        point.id(),
                        point.label(),
                        "state feeder.cable, its length_m and any size; its device, too, is sized then"));
            } else {
                labels.put(point.id(), point.label());
                devices.put(point.id(), Ladder.ratings(practice));
                ratings.put(
                        point.id(),
                        size(point.feeder().orElseThrow().breakerAmps()).map(Size::amps));
                cables.put(point.id(), Ladder.cables(size.get().conductor().orElseThrow()));
                sizes.put(point.id(), size);
            }
        }
        climb(Part.DEVICE, Criteria.DEVICE, devices, ratings, labels);
        climb(Part.FEEDER_CABLE, Criteria.feederCable(practice), cables, sizes, labels);
    }

    private void interrupting() {
        Map<String, List<Size>> ladders = new LinkedHashMap<>();
        Map<String, Optional<Size>> stated = new LinkedHashMap<>();
        Map<String, String> labels = new LinkedHashMap<>();
        for (Point point : layout.distribution().points()) {
            if (!point.isSupply()) {
                ladders.put(point.id(), Ladder.interrupting(practice));
                stated.put(point.id(), size(point.interruptingAmps()).map(Size::kiloamps));
                labels.put(point.id(), point.label());
            }
        }
        climb(Part.INTERRUPTING, List.of(Criteria.INTERRUPTING), ladders, stated, labels);
    }
}
