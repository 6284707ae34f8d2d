/** What each document of a plan shows, before anything is drawn: tables, panel schedules, facts. */
package evenrise.solver.report.page;
