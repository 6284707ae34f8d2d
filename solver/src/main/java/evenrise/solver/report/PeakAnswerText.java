package evenrise.solver.report;

import evenrise.model.answer.Alternative;
import evenrise.model.answer.PeakAnswer;
import evenrise.model.contract.Phrase;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Metrics;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Verdict;
import java.util.List;

/** What makes the peak and which single changes lower it, for a screen. */
public final class PeakAnswerText {
    private PeakAnswerText() {}

    public static List<String> lines(PeakAnswer answer, Layout layout, Verdict verdict, Paint paint) {
        Metrics metrics = verdict.metrics();
        Section section = new Section(
                paint,
                "The supply peaks at " + Numbers.amps(metrics.peakInrushAmps()) + " A on phase " + metrics.peakPhase()
                        + " at " + Numbers.seconds(metrics.peakAtSeconds()) + " s");
        section.text(
                "At nominal voltage. For each load: the change that lowers the peak most and breaks no rule that is"
                        + " kept now; its cost is what it adds to the objective.");
        Table table = new Table()
                .words("Load")
                .number("On, s")
                .number("In use, A")
                .number("Inrush, A")
                .text("Change")
                .number("Peak, A")
                .number("Cost");
        for (PeakAnswer.Part part : answer.parts()) {
            table.row(
                    part.share().load(),
                    Numbers.seconds(
                            layout.placement(part.share().load()).orElseThrow().onSeconds()),
                    Numbers.amps(part.share().baseAmps()),
                    Numbers.amps(part.share().amps() - part.share().baseAmps()),
                    part.lowest().map(PeakAnswerText::change).orElse("none lowers it"),
                    part.lowest()
                            .map(each -> ChangeWords.signed(each.peakChangeAmps()))
                            .orElse(Numbers.NONE),
                    part.lowest()
                            .map(each -> ChangeWords.signed(each.objectiveChange()))
                            .orElse(Numbers.NONE));
        }
        section.table(table);
        if (answer.remaining() > 0) {
            section.text(Phrase.counted(answer.remaining(), "load") + " more with smaller parts were not asked.");
        }
        section.text("Exchanges are tried within a load's panel and board; 'evenrise explain PROJECT PLAN LOAD --all'"
                + " tries all.");
        return Sections.joined(List.of(section.lines(), CautionText.lines(Cautions.ALL, paint)));
    }

    private static String change(Alternative each) {
        String seat = each.seat().panel() + " " + each.seat().slot()
                + each.seat()
                        .board()
                        .map(board -> ", " + board + " " + each.seat().output().orElseThrow())
                        .orElse("");
        return switch (each.change().way()) {
            case SLOT, OUTPUT, BOTH -> seat;
            default -> ChangeWords.of(each);
        };
    }
}
