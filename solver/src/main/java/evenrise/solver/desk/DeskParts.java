package evenrise.solver.desk;

import evenrise.solver.app.Jobs;
import java.util.List;

/** What the desk is made of, in the order in which its interface is described. */
final class DeskParts {
    private DeskParts() {}

    static List<DeskPart> of(DeskWork work, Desk desk, DeskFiles files, Jobs jobs) {
        // A part more is a line more.
        return List.of( //
                new WorkRoutes(work), //
                new TreeWork(desk), //
                new PracticeHall(desk, jobs), //
                new RehearsalWork(desk, files, jobs), //
                new ChanceWork(desk, jobs), //
                new EstimateWork(desk, files, jobs), //
                new MakeUpWork(desk, files), //
                new OfferWork(desk, files, jobs), //
                new CatalogueWork(desk, files, jobs), //
                new DocumentWork(desk, files, jobs), //
                new MailedPage(desk, files, jobs), //
                new PortfolioWork(desk, files), //
                new CureWork(desk, files, jobs), //
                new MeasuredWork(desk, files, jobs), //
                new Supposing(desk, jobs));
    }
}
