package evenrise.model.review;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.CheckCount;
import evenrise.model.plan.FindingText;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.plan.Subject;
import evenrise.model.project.Electrical;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Gathers what the checks say. */
public final class Remarks {
    /** Place of a remark that is about many. */
    public static final String PLANT = "plant";

    private static final int NAMED = 3;
    private static final int NAMED_LOADS = 5;

    private final Subjects subjects;
    private final List<Remark> remarks = new ArrayList<>();
    private final List<Quantity> quantities = new ArrayList<>();
    private final Map<String, Set<String>> made = new HashMap<>();
    private final Map<String, Set<String>> notMade = new HashMap<>();
    private String asking = "";

    Remarks(Project project) {
        subjects = new Subjects(project);
    }

    /**
     * Adds a remark whose message is still without its cure, where it has one. Where it does not say what it is about, it is
     * about its place.
     */
    public void add(Remark remark) {
        Remark whole =
                remark.cure().isEmpty() ? remark : remark.withMessage(FindingText.of(remark.message(), remark.cure()));
        remarks.add(whole.subjects().isEmpty() ? whole.withSubjects(subjects.of(List.of(whole.place()))) : whole);
        if (remark.grade() == Grade.BREAKS || remark.grade() == Grade.EXCEEDS_RECOMMENDATION) {
            made(remark.check(), remark.place());
        }
    }

    /** What those places are, as far as their ids alone tell. */
    List<Subject> about(Collection<String> places) {
        return subjects.of(places);
    }

    /** The check whose figures come from now on. */
    void asking(String check) {
        asking = check;
    }

    public void add(Quantity quantity) {
        quantities.add(asking.isEmpty() ? quantity : quantity.withCheck(asking));
    }

    /** Every place of a check of breakers, cables and what is behind them. */
    static List<String> loadsAndPanels(Layout layout) {
        return Stream.concat(
                        layout.project().loads().stream().map(Load::id),
                        layout.project().panels().stream().map(Panel::id))
                .toList();
    }

    /** The check had what it needs to judge at {@code place}. */
    public void made(String check, String place) {
        made.computeIfAbsent(check, any -> new HashSet<>()).add(place);
    }

    /**
     * One remark that the check is made nowhere, for the same reason at each of {@code places}.
     *
     * @param where what the remark is about: the plant or the supply
     * @param needs what is missing, by its field
     */
    public void notCheckedAnywhere(String check, String where, Collection<String> places, String needs) {
        add(Remark.notChecked(check, where, needs + " ('" + where + "')"));
        notMade.computeIfAbsent(check, any -> new HashSet<>()).addAll(places);
    }

    /** The practice by which a check judges; where none is stated it is made nowhere, which is said. */
    Optional<Practice> practice(String check, Layout layout, Collection<String> places) {
        Optional<Practice> practice = layout.project().electrical().flatMap(Electrical::practice);
        if (practice.isEmpty()) {
            notCheckedAnywhere(check, PLANT, places, "electrical.practice");
        }
        return practice;
    }

    /**
     * One remark for all places that a check says nothing of, the first few by name; none where {@code places} is empty.
     *
     * @param needs what is missing, by its field
     */
    public void notChecked(String check, List<String> places, String needs) {
        if (places.isEmpty()) {
            return;
        }
        notMade.computeIfAbsent(check, any -> new HashSet<>()).addAll(places);
        addNotChecked(check, places.size() == 1 ? places.get(0) : PLANT, places, needs + " (" + named(places) + ")");
    }

    private void addNotChecked(String check, String where, Collection<String> places, String needs) {
        add(Remark.notChecked(check, where, needs).withSubjects(subjects.of(places)));
    }

    /** The first few by name, the others counted. */
    static String named(List<String> places) {
        return Phrase.quoted(places, NAMED);
    }

    static String namedLoads(List<Load> loads) {
        return Phrase.quoted(loads.stream().map(Load::id).toList(), NAMED_LOADS);
    }

    /** Each place counts once a check; where one part of a check is missing there, it is not made. */
    CheckCount count(String check) {
        Set<String> missing = notMade.getOrDefault(check, Set.of());
        long judged = made.getOrDefault(check, Set.of()).stream()
                .filter(place -> !missing.contains(place))
                .count();
        return CheckCount.builder()
                .check(check)
                .made((int) judged)
                .notMade(missing.size())
                .build();
    }

    public List<Remark> remarks() {
        return List.copyOf(remarks);
    }

    public List<Quantity> quantities() {
        return List.copyOf(quantities);
    }
}
