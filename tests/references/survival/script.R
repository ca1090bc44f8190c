# Makes values.json: Rscript tests/references/survival/script.R > tests/references/survival/values.json
# Kaplan-Meier shares still lame with log-log limits, by the survival package's survfit.
library(survival)

number <- function(x) ifelse(is.na(x), "null", sprintf("%.17g", x))
list_of <- function(x) paste0("[", paste(number(x), collapse = ","), "]")

set.seed(20260314)
herds <- list(
  list(n = 5, ties = 3, censored = 0.2), list(n = 8, ties = 5, censored = 0.5), list(n = 12, ties = 4, censored = 0),
  list(n = 20, ties = 10, censored = 0.3), list(n = 30, ties = 6, censored = 0.1), list(n = 40, ties = 60, censored = 0.4),
  list(n = 75, ties = 14, censored = 0.6), list(n = 120, ties = 28, censored = 0.25), list(n = 200, ties = 21, censored = 0.05),
  list(n = 400, ties = 90, censored = 0.35)
)
confidences <- c(0.95, 0.9, 0.99, 0.8, 0.5)

one <- function(place) {
  herd <- herds[[place]]
  confidence <- confidences[(place - 1) %% length(confidences) + 1]
  days <- floor(runif(herd$n) * (herd$ties + 1))
  sound <- as.integer(runif(herd$n) >= herd$censored)
  fit <- survfit(Surv(days, sound) ~ 1, conf.type = "log-log", conf.int = confidence)
  at <- fit$n.event > 0
  sprintf(
    '    {"confidence": %s, "days": %s, "sound": %s,\n     "at": %s, "atRisk": %s, "becameSound": %s,\n     "stillLame": %s,\n     "low": %s,\n     "high": %s}',
    number(confidence), list_of(days), list_of(sound), list_of(fit$time[at]), list_of(fit$n.risk[at]),
    list_of(fit$n.event[at]), list_of(fit$surv[at]), list_of(fit$lower[at]), list_of(fit$upper[at])
  )
}

cat(sprintf(
  '{\n  "made with": "%s, survival %s, Rscript script.R",\n  "flocks": [\n%s\n  ]\n}\n',
  R.version.string, packageVersion("survival"), paste(sapply(seq_along(herds), one), collapse = ",\n")
))
