# Reference values for animals that left lame (a competing end) and for ends known only between two looks. Run by hand:
#   Rscript tests/references/survival/between.R
# Shares and standard errors of the competing case: survfit of the survival package (multi-state). Ends between looks: the
# likeliest shares by Turnbull's steps, 200,000 of them, in this script, with the information matrix by MASS::ginv; the
# same by survfit(type = "interval2") where nothing left, which stops sooner.
suppressMessages({library(survival); library(jsonlite)})
here <- dirname(sub("--file=", "", grep("--file=", commandArgs(), value = TRUE)))
set.seed(6)

competing <- lapply(1:12, function(i) {
  n <- sample(c(6, 15, 40, 120), 1)
  days <- sample(0:30, n, TRUE)
  end <- sample(c("lame", "sound", "left"), n, TRUE, c(.3, .5, .2))
  fit <- survfit(Surv(pmax(days, 0) + 1, factor(end, c("lame", "sound", "left"))) ~ 1)
  sound <- fit$pstate[, 2]; left <- fit$pstate[, 3]
  keep <- fit$n.event[, 2] + fit$n.event[, 3] > 0
  list(days = days, end = end, day = fit$time[keep] - 1, sound = sound[keep], left = left[keep], se = fit$std.err[keep, 2])
})

steps <- function(sets, n, rounds = 200000) {
  m <- ncol(sets); p <- rep(1 / m, m)
  for (i in seq_len(rounds)) p <- p * as.vector(crossprod(sets, n / as.vector(sets %*% p))) / sum(n)
  p
}
between <- lapply(1:10, function(i) {
  n <- sample(c(8, 20, 60), 1)
  true <- rexp(n, 1 / 9) + .3
  leaves <- rexp(n, 1 / c(1e9, 40)[1 + i %% 2])
  # Looks some days apart; the last one is the end of watching.
  rec <- lapply(seq_len(n), function(k) {
    looks <- cumsum(sample(2:8, 6, TRUE)); last <- looks[sample(2:6, 1)]; looks <- looks[looks <= last]
    gone <- ceiling(leaves[k]); found <- looks[looks >= true[k]][1]
    if (!is.na(found) && found <= gone) { before <- c(0, looks)[match(found, looks)]
      return(c(if (before > 0) before else found - 1, found, 1)) }
    if (gone < last) return(c(gone - 1, gone, 2))
    c(last, Inf, 0)
  })
  rec <- do.call(rbind, rec)
  founds <- sort(unique(rec[rec[, 3] == 1, 2])); gones <- sort(unique(rec[rec[, 3] == 2, 2]))
  # Turnbull's innermost stretches: a finding before which some doubt begins after the finding before it.
  starts <- rec[rec[, 3] != 2, 1]
  inner <- sapply(seq_along(founds), function(k) max(starts[starts < founds[k]]) >= c(-1, founds)[k])
  founds <- founds[inner]
  at <- c(founds, gones, Inf); kind <- c(rep(1, length(founds)), rep(2, length(gones)), 3)
  sets <- t(apply(rec, 1, function(r) if (r[3] == 1) kind == 1 & at > r[1] & at <= r[2]
                  else if (r[3] == 2) kind == 2 & at == r[2] else at > r[1])) * 1
  p <- steps(sets, rep(1, n)); keep <- p > 1e-7
  a <- sets[, keep, drop = FALSE]; d <- as.vector(a %*% p[keep])
  info <- crossprod(a / d); cov <- tryCatch(solve(info) - tcrossprod(p[keep]) / n, error = function(e) NULL)
  sound <- sapply(founds, function(t) sum(p[kind == 1 & at <= t]))
  se <- if (is.null(cov)) rep(NA, length(founds)) else sapply(founds, function(t) {
    v <- ((kind == 1 & at <= t)[keep]) * 1; sqrt(max(0, t(v) %*% cov %*% v)) })
  out <- list(lameUntil = rec[, 1], day = ifelse(is.finite(rec[, 2]), rec[, 2], -1), kind = rec[, 3], at = founds, sound = sound, se = se)
  if (!length(gones)) {
    fit <- survfit(Surv(rec[, 1], ifelse(is.finite(rec[, 2]), rec[, 2], NA), type = "interval2") ~ 1)
    cat("largest difference from survfit:", max(sapply(sound, function(s) min(abs(1 - fit$surv - s)))), "\n")
  }
  out
})
write(toJSON(list(competing = competing, between = between), digits = I(16), auto_unbox = TRUE, na = "null"),
      file.path(here, "between.json"))
