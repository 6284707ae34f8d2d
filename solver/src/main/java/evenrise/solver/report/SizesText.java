package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.sizing.Answer;
import evenrise.model.sizing.Part;
import evenrise.model.sizing.Proposal;
import evenrise.model.sizing.Size;
import evenrise.model.sizing.Sizes;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Proposed sizes, for a screen: tables first, then the arithmetic, then what was not sized and not asked. */
public final class SizesText {
    private static final int NAMED = 5;
    private static final String NONE = "-";
    private static final List<Part> CABLES = List.of(Part.BRANCH_CABLE, Part.FEEDER_CABLE);

    private SizesText() {}

    /**
     * @param place that alone is told
     * @param all whether the arithmetic is shown of what the project states like that already, too
     */
    public static List<String> lines(Sizes sizes, Optional<String> place, boolean all, Paint paint) {
        List<Proposal> told = sizes.proposals().stream()
                .filter(each -> place.isEmpty() || each.place().equals(place.get()))
                .toList();
        List<String> lines = new ArrayList<>();
        Section head = new Section(paint, "Proposed sizes");
        if (!sizes.hasPractice()) {
            head.text(
                    Tone.BAD,
                    "Nothing was sized: the project states no practice. Maybe state \"practice\": \"nec\" or \"iec\" in"
                            + " its \"electrical\".");
            lines.addAll(head.lines());
            lines.add("");
            lines.addAll(CautionText.lines(Cautions.ALL, paint));
            return lines;
        }
        head.text(
                "The least standard sizes that the checks of the electrical review have nothing to say against."
                        + " Proposals: nothing was written to the project. Room for growth, discrimination, the energy that a"
                        + " breaker lets through to its cable, protective conductors and what a socket outlet asks of its breaker are not in them.");
        if (!sizes.hasPlan()) {
            head.text(
                    Tone.BAD,
                    "No plan was given: feeders, transformers and interrupting ratings were not sized, and branches by"
                            + " current alone, without voltage drop and disconnection.");
        }
        lines.addAll(head.lines());
        for (Part part : Part.values()) {
            List<Proposal> of =
                    told.stream().filter(each -> each.part() == part).toList();
            if (of.stream().anyMatch(SizesText::isSizedOrTried)) {
                lines.add("");
                lines.addAll(new Section(paint, heading(part))
                        .table(table(part, of, all))
                        .lines());
            }
        }
        section("Arithmetic", arithmetic(told, all || place.isPresent()), paint, lines);
        section("Not sized", notSized(told), paint, lines);
        if (place.isEmpty()) {
            section("What these sizes leave open", open(sizes, all), paint, lines);
        }
        lines.add("");
        lines.addAll(CautionText.lines(Cautions.ALL, paint));
        return lines;
    }

    private static void section(String heading, List<String> items, Paint paint, List<String> lines) {
        if (!items.isEmpty()) {
            Section section = new Section(paint, heading);
            items.forEach(section::item);
            lines.add("");
            lines.addAll(section.lines());
        }
    }

    private static String heading(Part part) {
        return switch (part) {
            case BREAKER -> "Branch breakers";
            case BRANCH_CABLE -> "Branch cables";
            case DEVICE -> "Devices of feeders";
            case FEEDER_CABLE -> "Cables of feeders";
            case TRANSFORMER -> "Transformers";
            case INTERRUPTING -> "Interrupting ratings";
        };
    }

    private static boolean isSizedOrTried(Proposal proposal) {
        return proposal.proposed().isPresent() || !proposal.answers().isEmpty();
    }

    /** Equal rows are one, unless all are asked for. */
    private static Table table(Part part, List<Proposal> proposals, boolean all) {
        List<String> criteria = !CABLES.contains(part)
                ? List.of()
                : proposals.stream()
                        .flatMap(each -> each.answers().stream())
                        .map(Answer::criterion)
                        .distinct()
                        .toList();
        Table table = new Table().words("Place").number("Stated");
        criteria.forEach(each -> table.number("By " + each));
        table.number("Proposed").text("");
        Map<Object, List<Proposal>> equal = new LinkedHashMap<>();
        proposals.stream()
                .filter(SizesText::isSizedOrTried)
                .forEach(each -> equal.computeIfAbsent(all ? each : cells(each, criteria), any -> new ArrayList<>())
                        .add(each));
        equal.values().forEach(rows -> {
            Proposal first = rows.get(0);
            List<String> cells = new ArrayList<>();
            cells.add(first.place() + (rows.size() == 1 ? "" : " and " + (rows.size() - 1) + " more"));
            cells.addAll(cells(first, criteria));
            table.row(first.proposed().isEmpty() ? Tone.BAD : Tone.PLAIN, cells.toArray(String[]::new));
        });
        return table;
    }

    private static List<String> cells(Proposal proposal, List<String> criteria) {
        List<String> cells = new ArrayList<>();
        cells.add(text(proposal.stated()));
        criteria.forEach(criterion ->
                cells.add(proposal.answer(criterion).map(it -> text(it.least())).orElse(NONE)));
        cells.add(proposal.proposed().map(Size::text).orElse("none"));
        cells.add(beside(proposal));
        return cells;
    }

    private static String text(Optional<Size> size) {
        return size.map(Size::text).orElse(NONE);
    }

    /** How the proposal is beside what is stated, and whether it is voltage drop that asks for so much. */
    private static String beside(Proposal proposal) {
        if (proposal.proposed().isEmpty()) {
            return "see below";
        }
        double proposed = proposal.proposed().get().amount();
        String word = proposal.stated()
                .map(stated -> Math.abs(stated.amount() - proposed) < 1e-9
                        ? ""
                        : stated.amount() < proposed ? "larger than stated" : "less than stated")
                .orElse("");
        return proposal.isForVoltageDrop() ? (word.isEmpty() ? "" : word + ", ") + "for voltage drop" : word;
    }

    /**
     * What reads the same of several places stands once; so does, unless all is asked for, whatever is satisfied with the
     * least size there is, whose figures say little.
     */
    private static List<String> arithmetic(List<Proposal> proposals, boolean all) {
        Map<String, List<Proposal>> same = new LinkedHashMap<>();
        proposals.stream()
                .filter(SizesText::isSizedOrTried)
                .filter(each -> all || each.differs() || each.proposed().isEmpty())
                .forEach(each -> same.computeIfAbsent(
                                arithmetic(each, all).replace(Phrase.quoted(each.place()), ""),
                                any -> new ArrayList<>())
                        .add(each));
        return same.values().stream()
                .map(equal -> Phrase.quoted(equal.stream().map(Proposal::place).toList(), NAMED) + ", "
                        + arithmetic(equal.get(0), all))
                .toList();
    }

    private static boolean isLeast(Proposal proposal) {
        return proposal.proposed().isPresent()
                && proposal.answers().stream().allMatch(each -> each.below().isEmpty());
    }

    private static String arithmetic(Proposal proposal, boolean all) {
        if (isLeast(proposal) && !all) {
            return proposal.part().text() + " "
                    + proposal.proposed().orElseThrow().text()
                    + ": the least that is proposed, by every criterion; --all shows its figures.";
        }
        return proposal.part().text() + " "
                + proposal.proposed().map(Size::text).orElse("none") + ": "
                + proposal.answers().stream().map(SizesText::arithmetic).collect(Collectors.joining("; "))
                + ".";
    }

    private static String arithmetic(Answer answer) {
        String least = answer.least().map(Size::text).orElse("no size");
        String figure = answer.figure().isEmpty() ? "" : " (as proposed: " + answer.figure() + ")";
        String below = answer.below().isEmpty()
                ? ", the least that is proposed"
                : ": with " + answer.below().get().text() + " " + answer.why();
        return "by " + answer.criterion() + " " + least + below + figure;
    }

    /** The same reason once, with its places. */
    private static List<String> notSized(List<Proposal> proposals) {
        Map<String, List<String>> places = new LinkedHashMap<>();
        proposals.stream()
                .filter(each -> each.proposed().isEmpty())
                .forEach(each -> places.computeIfAbsent(
                                each.part().text() + ": " + each.notSized(), any -> new ArrayList<>())
                        .add(each.place()));
        return places.entrySet().stream()
                .map(each -> each.getKey() + " (" + Phrase.quoted(each.getValue(), NAMED) + ").")
                .toList();
    }

    /** Loads that no branch cable brings within the drop in all are one matter: that of what lies before them. */
    private static List<String> open(Sizes sizes, boolean all) {
        List<String> lost = sizes.open().stream()
                .filter(SizesText::isDrop)
                .map(Remark::place)
                .toList();
        List<String> lines = new ArrayList<>();
        if (!lost.isEmpty() && !all) {
            lines.add(Phrase.quoted(lost, NAMED) + " lose more than 5 % in all, whatever their branches: feeders and"
                    + " transformers before them take over 4 % of it. Maybe take larger ones there; --all shows each.");
        }
        sizes.open().stream()
                .filter(each -> all || each.grade() != Grade.NOTE && !isDrop(each))
                .map(Remark::message)
                .forEach(lines::add);
        return lines;
    }

    private static boolean isDrop(Remark remark) {
        return remark.kind().equals("drops-too-far");
    }
}
